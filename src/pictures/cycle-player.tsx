import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { CyclePicture } from './cycle-picture.tsx';
import { MOTIONS, STATIONS, type Station } from './tying-cycle.ts';

/** How long a station stands before the next, milliseconds: long enough to read what it tells. */
const STATION_MS = 5_000;

/** One tie, station by station: stepped by the buttons, or slowly by itself where motion is welcome. */
export function CyclePlayer(): JSX.Element {
  const at = useSignal(0);
  const isPlaying = useSignal(false);
  const last = STATIONS.length - 1;
  const station = STATIONS[at.value] ?? FIRST;
  const step = (by: number) => {
    at.value = Math.min(last, Math.max(0, at.value + by));
  };
  useEffect(() => {
    if (!isPlaying.value) return;
    const timer = setInterval(() => {
      at.value = at.value === last ? 0 : at.value + 1;
    }, STATION_MS);
    return () => clearInterval(timer);
  }, [isPlaying.value]);
  return (
    <section class="cycle-player" aria-label="One tie, step by step">
      <CyclePicture station={station} />
      <div class="cycle-tells" aria-live="polite">
        <h3>
          {at.value + 1}. {station.title}
        </h3>
        <p>{station.tells}</p>
      </div>
      <div class="cycle-keys">
        <button type="button" aria-disabled={at.value === 0} onClick={() => step(-1)}>
          Back
        </button>
        <button
          type="button"
          aria-pressed={isPlaying.value}
          onClick={() => {
            isPlaying.value = !isPlaying.value;
          }}
        >
          {isPlaying.value ? 'Hold' : 'Run slowly'}
        </button>
        <button type="button" aria-disabled={at.value === last} onClick={() => step(1)}>
          Next
        </button>
      </div>
      <TimingStrip deg={station.deg} />
    </section>
  );
}

const [FIRST] = STATIONS as readonly [Station, ...Station[]];

/** What moves when, along one turn of the knotter shaft, with the moment shown. */
function TimingStrip({ deg }: { readonly deg: number }): JSX.Element {
  return (
    <div class="timing">
      <p>
        What moves when, in one turn of the knotter shaft. The order is what counts: never set anything by it.
      </p>
      <ol>
        {MOTIONS.map(({ mover, name, fromDeg, toDeg, timedTo }) => (
          <li key={mover} data-moving={deg >= fromDeg && deg <= toDeg && deg > 0 && deg < 360}>
            <span class="timing-name">
              {name} <span class="timing-to">timed to {timedTo}</span>
            </span>
            <span class="timing-row" aria-hidden="true">
              <span class="timing-bar" style={{ left: percent(fromDeg), width: percent(toDeg - fromDeg) }} />
              <span class="timing-now" style={{ left: percent(deg) }} />
            </span>
          </li>
        ))}
      </ol>
    </div>
  );
}

function percent(deg: number): string {
  return `${(100 * deg) / 360}%`;
}
