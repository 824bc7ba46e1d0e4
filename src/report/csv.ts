import type { JobHeader } from '../records/job-header.ts';
import type { JobCard, LockoutLine, MeasuredFinding } from './card.ts';
import { partName } from './findings.ts';
import { measurementText } from './words.ts';

type Cell = string | number | undefined;

/** One job as a table, a row a finding, repair, part, lockout line or suspicion; times in UTC by ISO 8601. */
export function jobCsv(card: JobCard): string {
  const head = ['time', 'kind', 'about', 'asked', 'result', 'amount', 'unit', 'standing', 'probability'];
  const rows: Cell[][] = [
    [isoTime(card.startedAtMs), 'job', card.jobId, '', card.status],
    [isoTime(card.startedAtMs), 'person', card.person],
    [isoTime(card.startedAtMs), 'machine', card.machine?.name, '', card.machine?.makeAndModel],
    [isoTime(card.startedAtMs), 'side', card.side],
    [isoTime(card.startedAtMs), 'symptom', card.symptom?.words, '', card.symptom?.by],
    ...card.findings.map(({ atMs, kind, part, asked, answer, measured }) => [
      isoTime(atMs),
      kind,
      partName(part),
      asked,
      answer,
      measured?.value.amount,
      measured?.value.unit,
      measured && standingOf(measured),
    ]),
    ...card.repairs.map(({ cause, outcome, proof }) => [
      '',
      'repair',
      cause,
      '',
      outcome,
      proof?.clean,
      proof && 'clean ties',
      proof?.claim,
    ]),
    ...card.parts.map(({ name, side, state, urgency, quantity, reason }) => [
      '',
      'part',
      name,
      side,
      `${state}, ${urgency}`,
      quantity,
      quantity === undefined ? '' : 'pieces',
      reason,
    ]),
    ...card.suspects.map(({ cause, probability }) => suspicion('suspected', cause, probability)),
    ...card.excluded.map(({ cause, probability }) => suspicion('excluded', cause, probability)),
    ...card.lockout.map((line) => [
      isoTime(line.atMs),
      `lockout ${line.kind}`,
      line.text,
      '',
      lockoutDetail(line),
    ]),
    ...card.figures.map(({ atMs, text, granted }) => [
      isoTime(atMs),
      'figure',
      text,
      '',
      '',
      '',
      '',
      granted.join(' '),
    ]),
    ...(card.count?.runs ?? []).map(({ from, to, missed, rate }) => [
      '',
      'bales',
      `bales ${from} to ${to}`,
      '',
      '',
      missed,
      'missed',
      '',
      rate,
    ]),
    ...(card.count?.patterns ?? []).map((text) => ['', 'pattern', text]),
    ...card.photos.map(({ atMs, of, side, photoId }) => [isoTime(atMs), 'photo', of, side, photoId]),
    ...card.notes.map(({ atMs, text }) => [isoTime(atMs), 'note', text]),
    ...card.unresolved.map((text) => ['', 'left open', text]),
  ];
  return csv([head, ...rows.map((row) => head.map((_, column) => row[column]))]);
}

/** The list of jobs as a table, a row a job. @param machineNames by machine id */
export function jobsCsv(headers: readonly JobHeader[], machineNames: ReadonlyMap<string, string>): string {
  return csv([
    ['job', 'begun', 'last', 'state', 'machine', 'person', 'side', 'symptom', 'cause', 'outcome'],
    ...headers.map((header) => [
      header.id,
      isoTime(header.createdAtMs),
      isoTime(header.lastAtMs),
      header.status,
      machineNames.get(header.machineId ?? ''),
      header.person,
      header.side,
      header.symptom,
      header.cause,
      header.outcome,
    ]),
  ]);
}

/** Rows as RFC 4180 has them: commas, quotes where needed and doubled inside, CR LF after every row. */
export function csv(rows: readonly (readonly Cell[])[]): string {
  return rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('');
}

function cellText(cell: Cell): string {
  if (cell === undefined) return '';
  if (typeof cell === 'number') return String(cell);
  // A spreadsheet would run free text that begins like a formula; an apostrophe makes it text again.
  const inert = /^[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(inert) ? `"${inert.replaceAll('"', '""')}"` : inert;
}

/** What a measured value was judged by: the machine's own limits go first. */
function standingOf({ own, typically, provenance }: MeasuredFinding): string {
  const ownText = own
    ? `own limits ${own.limits.map(measurementText).join(' to ')} from ${own.source}; `
    : '';
  return `${ownText}${typically} ${provenance}`;
}

function suspicion(kind: string, cause: string, probability: number): Cell[] {
  return ['', kind, cause, '', '', '', '', 'expert estimate', probability];
}

function lockoutDetail(line: LockoutLine): string {
  switch (line.kind) {
    case 'confirmed':
      return `by ${line.by}; ${line.answersTo.join('; ')}`;
    case 'reached':
      return line.state;
    case 'voided':
    case 'notTaken':
      return '';
  }
}

function isoTime(atMs: number): string {
  return new Date(atMs).toISOString();
}
