import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { MOTIONS, STATIONS, stationAfter } from '../../flows/tying-cycle.ts';
import { CyclePicture } from './cycle-picture.tsx';

/** How long a station stands before the next, milliseconds: long enough to read what it tells. */
const STATION_MS = 5_000;
const LAST = STATIONS.length - 1;

/** One tie, station by station: stepped by the buttons, or slowly by itself where motion is welcome. */
export function CyclePlayer(): JSX.Element {
  const at = useSignal(0);
  const isPlaying = useSignal(false);
  const step = (by: number) => {
    at.value = stationAfter(at.value, by);
  };
  useEffect(() => {
    if (!isPlaying.value) return;
    const timer = setInterval(() => {
      at.value = at.value === LAST ? 0 : at.value + 1;
    }, STATION_MS);
    return () => clearInterval(timer);
  }, [isPlaying.value]);
  return (
    <CycleStation at={at.value} onBack={() => step(-1)} onNext={() => step(1)}>
      <button
        type="button"
        aria-pressed={isPlaying.value}
        onClick={() => {
          isPlaying.value = !isPlaying.value;
        }}
      >
        {isPlaying.value ? 'Hold' : 'Run slowly'}
      </button>
    </CycleStation>
  );
}

interface CycleStationProps {
  /** Index of the station. */
  readonly at: number;
  /** A key between back and next. */
  readonly children?: JSX.Element;
  onBack(): void;
  onNext(): void;
}

/** One tie at one of its stations, with keys to step it. */
export function CycleStation({ at, children, onBack, onNext }: CycleStationProps): JSX.Element {
  const station = STATIONS[at] ?? STATIONS[0];
  return (
    <div class="cycle-player">
      <CyclePicture station={station} />
      <div class="cycle-tells" aria-live="polite">
        <p class="cycle-title">
          {at + 1}. {station.title}
        </p>
        <p>{station.tells}</p>
      </div>
      <div class="cycle-keys">
        <button type="button" aria-disabled={at === 0} onClick={onBack}>
          Back
        </button>
        {children}
        <button type="button" aria-disabled={at === LAST} onClick={onNext}>
          Next
        </button>
      </div>
      <TimingStrip deg={station.deg} />
    </div>
  );
}

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
