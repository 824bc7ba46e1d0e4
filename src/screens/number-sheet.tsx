import { useComputed, useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { type CalendarDay, isDayOfCalendar, MONTH_NAMES } from '../../grammar/calendar.ts';
import type { ExpectedValue } from '../../grammar/expecting.ts';
import type { Dimension, Measurement, MissCount, UnitId } from '../../grammar/measurements.ts';
import {
  amountOf,
  DENOMINATORS,
  EMPTY_ENTRY,
  type EntryKey,
  entryText,
  type NumberEntry,
  pressKey,
  takesFractions,
  UNIT_LABELS,
  unitsOf,
} from './number-entry.ts';
import './number-sheet.css';
import type { Preferences } from './preferences.ts';
import { Sheet } from './sheet.tsx';

interface NumberSheetProps {
  readonly value: ExpectedValue;
  readonly question: string;
  /** Whose units come first. */
  readonly units: Preferences['units'];
  onMeasurement(measurement: Measurement): void;
  onMissCount(missCount: MissCount): void;
  onCount(count: number): void;
  onDay(day: CalendarDay): void;
  onClose(): void;
}

/** A number by touch: what is read back and accepted afterwards is the same as for a spoken one. */
export function NumberSheet({ value, ...rest }: NumberSheetProps): JSX.Element {
  switch (value.kind) {
    case 'measurement':
      return <MeasurementPad dimension={value.dimension} {...rest} />;
    case 'missCount':
      return <MissCountPad {...rest} />;
    case 'count':
      return <CountPad {...rest} />;
    case 'day':
      return <DayPad {...rest} />;
  }
}

type PadProps = Omit<NumberSheetProps, 'value'>;

function MeasurementPad(props: PadProps & { readonly dimension: Dimension }): JSX.Element {
  const { dimension, question, units: system, onMeasurement, onClose } = props;
  const units = unitsOf(dimension, system);
  const entry = useSignal(EMPTY_ENTRY);
  const unit = useSignal<UnitId | undefined>(units[0]);
  const amount = useComputed(() => amountOf(entry.value));
  return (
    <Sheet title="Tap in the number" closeLabel="Back" isBare onClose={onClose}>
      <div class="pad">
        <div class="pad-side">
          <p class="pad-question">{question}</p>
          <output class="pad-reads" aria-live="polite">
            {entryText(entry.value) || '…'} {unit.value ? UNIT_LABELS[unit.value] : ''}
          </output>
          <fieldset class="pad-units">
            <legend class="for-ears">Unit</legend>
            {units.map((id) => (
              <button
                type="button"
                key={id}
                aria-pressed={unit.value === id}
                onClick={() => {
                  unit.value = id;
                }}
              >
                {UNIT_LABELS[id]}
              </button>
            ))}
          </fieldset>
          <GiveOrBack
            giveLabel="Give it"
            isReady={Boolean(amount.value)}
            onGive={() => {
              if (amount.value && unit.value) onMeasurement({ amount: amount.value, unit: unit.value });
            }}
            onClose={onClose}
          />
        </div>
        <Keys
          onKey={(key) => {
            entry.value = pressKey(entry.value, key);
          }}
          hasPoint
          hasFractions={takesFractions(dimension)}
        />
      </div>
    </Sheet>
  );
}

function CountPad({ question, onCount, onClose }: PadProps): JSX.Element {
  const entry = useSignal(EMPTY_ENTRY);
  const count = useComputed(() => amountOf(entry.value));
  return (
    <Sheet title="Tap in the number" closeLabel="Back" isBare onClose={onClose}>
      <div class="pad">
        <div class="pad-side">
          <p class="pad-question">{question}</p>
          <output class="pad-reads" aria-live="polite">
            {entryText(entry.value) || '…'}
          </output>
          <GiveOrBack
            giveLabel="Give it"
            isReady={count.value !== undefined}
            onGive={() => {
              if (count.value !== undefined) onCount(count.value);
            }}
            onClose={onClose}
          />
        </div>
        <Keys
          onKey={(key) => {
            entry.value = pressKey(entry.value, key);
          }}
          hasPoint={false}
          hasFractions={false}
        />
      </div>
    </Sheet>
  );
}

function MissCountPad({ question, onMissCount, onClose }: PadProps): JSX.Element {
  const misses = useSignal<NumberEntry>(EMPTY_ENTRY);
  const bales = useSignal<NumberEntry>(EMPTY_ENTRY);
  const isBales = useSignal(false);
  const given = useComputed(() => {
    const [missed, made] = [amountOf(misses.value), amountOf(bales.value)];
    return missed !== undefined && made !== undefined && made > 0 && missed <= made
      ? { misses: missed, bales: made }
      : undefined;
  });
  const tooMany = (amountOf(misses.value) ?? 0) > (amountOf(bales.value) ?? Number.POSITIVE_INFINITY);
  return (
    <Sheet title="Tap in the count" closeLabel="Back" isBare onClose={onClose}>
      <div class="pad">
        <div class="pad-side">
          <p class="pad-question">{question}</p>
          <div class="pad-counts">
            <button
              type="button"
              aria-pressed={!isBales.value}
              onClick={() => {
                isBales.value = false;
              }}
            >
              {entryText(misses.value) || '…'} missed
            </button>
            <span>out of</span>
            <button
              type="button"
              aria-pressed={isBales.value}
              onClick={() => {
                isBales.value = true;
              }}
            >
              {entryText(bales.value) || '…'} bales
            </button>
          </div>
          <p class="pad-trouble" role="status">
            {tooMany ? 'There cannot be more misses than bales.' : ''}
          </p>
          <GiveOrBack
            giveLabel="Give it"
            isReady={given.value !== undefined}
            onGive={() => {
              if (given.value) onMissCount(given.value);
            }}
            onClose={onClose}
          />
        </div>
        <Keys
          onKey={(key) => {
            const entry = isBales.value ? bales : misses;
            entry.value = pressKey(entry.value, key);
          }}
          hasPoint={false}
          hasFractions={false}
        />
      </div>
    </Sheet>
  );
}

/** First the month, then its day: both at once do not fit a small tablet. */
function DayPad({ question, onDay, onClose }: PadProps): JSX.Element {
  const month = useSignal<number | undefined>(undefined);
  const entry = useSignal(EMPTY_ENTRY);
  const isMonth = useSignal(true);
  const given = useComputed(() => {
    const day = amountOf(entry.value);
    if (month.value === undefined || day === undefined) return undefined;
    return { month: month.value, day };
  });
  const isDay = useComputed(() => given.value !== undefined && isDayOfCalendar(given.value));
  return (
    <Sheet title="Tap in the day" closeLabel="Back" isBare onClose={onClose}>
      <div class="pad">
        <div class="pad-side">
          <p class="pad-question">{question}</p>
          <div class="pad-counts">
            <button
              type="button"
              aria-pressed={isMonth.value}
              onClick={() => {
                isMonth.value = true;
              }}
            >
              {month.value === undefined ? 'Month' : MONTH_NAMES[month.value - 1]}
            </button>
            <button
              type="button"
              aria-pressed={!isMonth.value}
              onClick={() => {
                isMonth.value = false;
              }}
            >
              {entryText(entry.value) || 'Day'}
            </button>
          </div>
          <p class="pad-trouble" role="status">
            {given.value && !isDay.value ? 'That month has no such day.' : ''}
          </p>
          <GiveOrBack
            giveLabel="Give it"
            isReady={isDay.value}
            onGive={() => {
              if (given.value && isDay.value) onDay(given.value);
            }}
            onClose={onClose}
          />
        </div>
        {isMonth.value ? (
          <Months
            chosen={month.value}
            onMonth={(chosen) => {
              month.value = chosen;
              isMonth.value = false;
            }}
          />
        ) : (
          <Keys
            onKey={(key) => {
              entry.value = pressKey(entry.value, key);
            }}
            hasPoint={false}
            hasFractions={false}
          />
        )}
      </div>
    </Sheet>
  );
}

interface MonthsProps {
  readonly chosen: number | undefined;
  onMonth(month: number): void;
}

function Months({ chosen, onMonth }: MonthsProps): JSX.Element {
  return (
    <fieldset class="pad-digits">
      <legend class="for-ears">Month</legend>
      {MONTH_NAMES.map((name, at) => (
        <button
          type="button"
          key={name}
          aria-label={name}
          aria-pressed={chosen === at + 1}
          onClick={() => onMonth(at + 1)}
        >
          {name.slice(0, 3)}
        </button>
      ))}
    </fieldset>
  );
}

interface GiveOrBackProps {
  readonly giveLabel: string;
  readonly isReady: boolean;
  onGive(): void;
  onClose(): void;
}

function GiveOrBack({ giveLabel, isReady, onGive, onClose }: GiveOrBackProps): JSX.Element {
  return (
    <div class="pad-ends">
      <button type="button" onClick={onClose}>
        Back
      </button>
      <button type="button" class="pad-give" aria-disabled={!isReady} onClick={onGive}>
        {giveLabel}
      </button>
    </div>
  );
}

interface KeysProps {
  readonly hasPoint: boolean;
  readonly hasFractions: boolean;
  onKey(key: EntryKey): void;
}

const PARTS_NAMES = {
  2: 'halves',
  4: 'quarters',
  8: 'eighths',
  16: 'sixteenths',
  32: 'thirty-seconds',
} as const;

function Keys({ hasPoint, hasFractions, onKey }: KeysProps): JSX.Element {
  return (
    <>
      <fieldset class="pad-digits">
        <legend class="for-ears">Digits</legend>
        {[7, 8, 9, 4, 5, 6, 1, 2, 3, 0].map((digit) => (
          <button type="button" key={digit} onClick={() => onKey({ kind: 'digit', digit })}>
            {digit}
          </button>
        ))}
        {hasPoint ? (
          <button type="button" onClick={() => onKey({ kind: 'point' })}>
            point
          </button>
        ) : null}
        <button type="button" onClick={() => onKey({ kind: 'rubOut' })}>
          rub
        </button>
      </fieldset>
      {hasFractions ? (
        <fieldset class="pad-parts">
          <legend class="for-ears">Parts</legend>
          <button type="button" onClick={() => onKey({ kind: 'and' })}>
            and
          </button>
          {DENOMINATORS.map((bottom) => (
            <button
              type="button"
              key={bottom}
              aria-label={PARTS_NAMES[bottom]}
              onClick={() => onKey({ kind: 'parts', bottom })}
            >
              /{bottom}
            </button>
          ))}
        </fieldset>
      ) : null}
    </>
  );
}
