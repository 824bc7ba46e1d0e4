import { type Actor, createActor } from 'xstate';
import type { Channel, HeardEvent, JobEvent } from '../../flows/heard.ts';
import { jobMachine } from '../../flows/job.ts';
import { type Prompt, promptOf } from '../../flows/prompt.ts';
import type { MeaningId } from '../../grammar/lexicon.ts';
import type { Slots } from '../../grammar/understand.ts';

export const TOUCH: Channel = { by: 'touch' };

export function said(type: MeaningId, slots: Slots = {}, channel: Channel = TOUCH): HeardEvent {
  return { type, slots, channel };
}

/** A job to talk to in a test: what it asks, and how to answer. */
export class TestJob {
  readonly actor: Actor<typeof jobMachine> = createActor(jobMachine).start();

  get prompt(): Prompt {
    return promptOf(this.actor.getSnapshot());
  }

  get context() {
    return this.actor.getSnapshot().context;
  }

  /** @throws Error where the job does not take this now, so that a test never passes by being ignored */
  answer(type: MeaningId, slots: Slots = {}, channel: Channel = TOUCH): this {
    const event = said(type, slots, channel);
    if (!this.actor.getSnapshot().can(event))
      throw new Error(`${type} is not taken in ${this.prompt.state}.`);
    this.actor.send(event);
    return this;
  }

  send(event: JobEvent): this {
    this.actor.send(event);
    return this;
  }

  /** Confirms whatever steps of a procedure are asked for, until something else is asked. */
  throughSteps(): this {
    for (;;) {
      const asked = this.prompt.expecting.meanings[0];
      if (!asked || !/^(lockout|handTurn|release)\./.test(asked)) return this;
      this.answer(asked);
    }
  }
}

/** A job that waits for the pull of the left twine holder, locked out. */
export function jobAtHolderPull(): TestJob {
  return new TestJob()
    .answer('symptom.heldStrandLost', { side: 'left' })
    .throughSteps()
    .answer('knot.frontEnd')
    .answer('needles.quiet')
    .answer('finding.clean')
    .answer('finding.sound')
    .answer('finding.balesSame')
    .throughSteps();
}
