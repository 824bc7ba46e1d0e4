import type { JSX } from 'preact';
import { type WearingPart, wearOutlook } from '../records/wear.ts';

const LEFT = 70;
const RIGHT = 590;
const TOP = 16;
const BOTTOM = 170;

const BALES = new Intl.NumberFormat('en', { maximumFractionDigits: 0 });
const WEAR = new Intl.NumberFormat('en', { maximumFractionDigits: 2 });

/** A part's wear against its bales: the readings, the line through them, and when it meets the limit. */
export function WearChart({ part }: { readonly part: WearingPart }): JSX.Element {
  const { readings, limitMm } = part;
  const outlook = wearOutlook(part);
  const lastReading = Math.max(1, ...readings.map(({ bales }) => bales));
  const reach =
    outlook.kind === 'forecast' ? Math.min(outlook.latestLimitAt.value, 4 * lastReading) : lastReading;
  const mostBales = Math.max(lastReading, reach) * 1.05;
  const mostMm = 1.15 * Math.max(limitMm, ...readings.map(({ wearMm }) => wearMm));
  const x = (bales: number) => LEFT + (Math.min(bales, mostBales) / mostBales) * (RIGHT - LEFT);
  const y = (wearMm: number) => BOTTOM - (Math.min(wearMm, mostMm) / mostMm) * (BOTTOM - TOP);
  return (
    <svg class="chart" viewBox="0 0 600 200" role="img" aria-label={wearText(part)}>
      <path d={`M${LEFT} ${TOP}V${BOTTOM}H${RIGHT}`} class="axis" fill="none" />
      <path d={`M${LEFT} ${y(limitMm)}H${RIGHT}`} class="axis limit" />
      <text x={LEFT - 10} y={y(limitMm) + 5} text-anchor="end">
        {WEAR.format(limitMm)} mm
      </text>
      {outlook.kind === 'forecast' ? (
        <>
          <path d={lineThrough(outlook, limitMm, x, y)} class="axis" />
          <path
            d={`M${x(outlook.earliestLimitAt.value)} ${y(limitMm) - 8}v16M${x(outlook.earliestLimitAt.value)} ${y(limitMm)}H${x(outlook.latestLimitAt.value)}M${x(outlook.latestLimitAt.value)} ${y(limitMm) - 8}v16`}
            class="band"
          />
        </>
      ) : null}
      {readings.map(({ bales, wearMm }) => (
        <circle key={`${bales}/${wearMm}`} cx={x(bales)} cy={y(wearMm)} r="6" class="dot" />
      ))}
      {[0, lastReading].map((bales) => (
        <text key={bales} x={x(bales)} y={BOTTOM + 22} text-anchor="middle">
          {BALES.format(bales)}
        </text>
      ))}
    </svg>
  );
}

/** The line by its slope and where it meets the limit. */
function lineThrough(
  outlook: Extract<ReturnType<typeof wearOutlook>, { kind: 'forecast' }>,
  limitMm: number,
  x: (bales: number) => number,
  y: (wearMm: number) => number,
): string {
  const slope = outlook.ratePerThousandBales.value / 1000;
  const startMm = limitMm - slope * outlook.limitAt.value;
  const from = startMm >= 0 ? 0 : -startMm / slope;
  return `M${x(from)} ${y(Math.max(0, startMm))}L${x(outlook.limitAt.value)} ${y(limitMm)}`;
}

/** What the chart shows, in words. */
export function wearText(part: WearingPart): string {
  const { name, limitMm, limitSource, readings } = part;
  const outlook = wearOutlook(part);
  const read = readings.map(
    ({ bales, wearMm }) => `${WEAR.format(wearMm)} mm at ${BALES.format(bales)} bales`,
  );
  const head = `${name}: ${read.length > 0 ? read.join(', ') : 'no reading yet'}. Limit ${WEAR.format(limitMm)} mm, from ${limitSource}.`;
  if (outlook.kind === 'no wear trend') return `${head} ${outlook.says}`;
  const { limitAt, earliestLimitAt, latestLimitAt, balesLeft, inspectAt } = outlook;
  const balesNow = Math.max(...readings.map(({ bales }) => bales));
  const again = inspectAt.value > balesNow ? `at ${BALES.format(inspectAt.value)}` : 'now';
  return `${head} It reaches the limit at about ${BALES.format(limitAt.value)} bales, with 95 % confidence between ${BALES.format(earliestLimitAt.value)} and ${BALES.format(latestLimitAt.value)}. Bales left, to be safe: ${BALES.format(balesLeft.value)}. Measure again ${again}.`;
}
