import type { JobHeader } from '../records/job-header.ts';
import { asSentence } from './sentence.ts';

/** A job in one line of a list: what it was about, in the person's own words. */
export function jobTitle({ symptom, side, cause }: JobHeader): string {
  const about = symptom ? asSentence(symptom) : 'Nothing said yet';
  return [about, side ? `${side} knotter` : '', cause ?? ''].filter(Boolean).join(' · ');
}

const DAY_AND_TIME = new Intl.DateTimeFormat('en', {
  weekday: 'short',
  day: 'numeric',
  month: 'short',
  hour: 'numeric',
  minute: '2-digit',
});

/** When a job was last touched, by the tablet's own clock. */
export function whenText(atMs: number): string {
  return DAY_AND_TIME.format(atMs);
}

const STATUS_WORDS: Readonly<Record<JobHeader['status'], string>> = {
  open: 'Still open',
  closed: 'Closed',
  handedOver: 'Handed over',
};

export function statusWord({ status }: JobHeader): string {
  return STATUS_WORDS[status];
}
