/**
 * A quantity a person may say or type, with the span in which it can be true.
 * Every figure checks its inputs here, so that an impossible value is refused in words that can be spoken.
 */
export interface Quantity {
  /** Plain name, as it is spoken after "the": "bale length". */
  readonly name: string;
  /** Spoken unit in the plural, or '' where the value is a bare number: "inches". */
  readonly unit: string;
  readonly low: number;
  readonly high: number;
  /** True where only whole numbers make sense, such as a count of bales. */
  readonly whole?: boolean;
}

/** Thrown for an input no baler could produce. The message is plain speech and says what to do next. */
export class ImpossibleFigure extends RangeError {
  override readonly name = 'ImpossibleFigure';
}

/**
 * Returns `value` if it is possible for `quantity`.
 * @throws ImpossibleFigure if it is not a number, not whole where it must be, or outside the quantity's span.
 */
export function possible(quantity: Quantity, value: number): number {
  const { name, low, high } = quantity;
  if (Number.isNaN(value)) {
    throw new ImpossibleFigure(`The ${name} is not a number. Say the ${name} again.`);
  }
  if (value < low || value > high) {
    throw new ImpossibleFigure(
      `The ${name} of ${spoken(quantity, value)} is outside ${sayNumber(low)} to ${spoken(quantity, high)}. ` +
        `Say the ${name} again.`,
    );
  }
  if (quantity.whole && !Number.isInteger(value)) {
    throw new ImpossibleFigure(
      `The ${name} must be a whole number, not ${sayNumber(value)}. Say the ${name} again.`,
    );
  }
  return value;
}

function spoken({ unit }: Quantity, value: number): string {
  return unit === '' ? sayNumber(value) : `${sayNumber(value)} ${unit}`;
}

const TOO_BIG_TO_SAY = 1e9;
const TOO_SMALL_TO_SAY = 1e-6;

/** Digits a voice can read: no exponent, no tail of binary rounding. */
function sayNumber(value: number): string {
  if (value < 0) return `minus ${sayNumber(-value)}`;
  if (value > TOO_BIG_TO_SAY) return 'more than a billion';
  if (value > 0 && value < TOO_SMALL_TO_SAY) return 'less than a millionth';
  return String(Number(value.toFixed(6)));
}
