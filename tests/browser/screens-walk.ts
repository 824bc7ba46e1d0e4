import type { BrowserContext, Page } from 'playwright-core';
import { type FigureDialogue, figurePrompt } from '../../flows/figures-asked/dialogue.ts';
import { countPrompt } from '../../flows/miss-log/saying.ts';
import { tallyOf } from '../../flows/miss-log/tally.ts';
import type { MeaningId } from '../../grammar/lexicon.ts';
import type { Slots } from '../../grammar/understand.ts';
import { PREFERENCES_PLACE } from '../../src/screens/preferences.ts';
import type { ConversationView } from '../../src/session/view.ts';
import { TestJob } from '../flows/talk.ts';

/** Tablets the screens are tried on, in CSS pixels at the nominal 96 dots an inch: 8, 10 and 13 inch. */
export const TABLETS = {
  'eight inch, landscape': { width: 962, height: 601 },
  'ten inch, portrait': { width: 800, height: 1280 },
  'thirteen inch, landscape': { width: 1366, height: 1024 },
} as const;

export const THEMES = ['day', 'shed'] as const;
export type Theme = (typeof THEMES)[number];

/** Every tablet in the day theme; colours do not hang on the size, so only one of them in the other theme too. */
export const LOOKS: readonly {
  readonly tablet: keyof typeof TABLETS;
  readonly viewport: { readonly width: number; readonly height: number };
  readonly theme: Theme;
}[] = [
  { tablet: 'eight inch, landscape', viewport: TABLETS['eight inch, landscape'], theme: 'day' },
  { tablet: 'ten inch, portrait', viewport: TABLETS['ten inch, portrait'], theme: 'day' },
  { tablet: 'ten inch, portrait', viewport: TABLETS['ten inch, portrait'], theme: 'shed' },
  { tablet: 'thirteen inch, landscape', viewport: TABLETS['thirteen inch, landscape'], theme: 'day' },
];

/** Opens a page of the app for somebody who has been through the first run. */
export async function openApp(
  context: BrowserContext,
  url: string,
  { theme = 'day', textSize = 100 }: { readonly theme?: Theme; readonly textSize?: number } = {},
): Promise<Page> {
  await context.addInitScript(([place, preferences]) => localStorage.setItem(place, preferences), [
    PREFERENCES_PLACE,
    JSON.stringify({ theme, textSize, wasWelcomed: true }),
  ] as const);
  const page = await context.newPage();
  await page.goto(url);
  await page.waitForSelector('main');
  return page;
}

export async function beginJob(page: Page): Promise<void> {
  await page.evaluate(() => {
    location.hash = '#/new';
  });
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.waitForSelector('.job');
}

export async function press(page: Page, meaning: MeaningId, slots: Slots = {}): Promise<void> {
  await page.evaluate(([said, carried]) => window.screensPage?.conversation().press(said, carried), [
    meaning,
    slots,
  ] as const);
}

/** Sets what the voice would show. */
export async function act(page: Page, change: Partial<ConversationView>): Promise<void> {
  await page.evaluate((shown) => window.screensPage?.conversation().act(shown), change);
}

/** Answers given where they are asked for; anything else gets the first answer that is listened for. */
const USUAL_ANSWERS: readonly MeaningId[] = [
  'symptom.heldStrandLost',
  'knot.frontEnd',
  'which.left',
  'end.square',
  'next.tiesItself',
  'when.heavyCrop',
  'finding.packed',
];

const MOST_STEPS = 120;

/**
 * Answers until a state is reached.
 * @param until the beginning of the state's name
 * @param instead answers to give before the usual ones
 */
export async function walkTo(page: Page, until: string, instead: readonly MeaningId[] = []): Promise<void> {
  const reached = await page.evaluate(
    ([wanted, answers, most]) => {
      const conversation = window.screensPage?.conversation();
      if (!conversation) return 'no job';
      for (let step = 0; step < most; step += 1) {
        const { state, expecting } = conversation.view.value.prompt;
        if (state.startsWith(wanted)) return '';
        const meaning =
          answers.find((answer) => expecting.meanings.includes(answer)) ?? expecting.meanings[0];
        if (expecting.value?.kind === 'missCount') {
          conversation.press('value.missRate', { missCount: { misses: 1, bales: 2 } });
        } else if (meaning) conversation.press(meaning);
        else return state;
      }
      return conversation.view.value.prompt.state;
    },
    [until, [...instead, ...USUAL_ANSWERS], MOST_STEPS] as const,
  );
  if (reached !== '') throw new Error(`${until} was not reached; the walk ended in ${reached}.`);
  await settled(page);
}

/** Two frames on: what was changed is drawn. */
export async function settled(page: Page): Promise<void> {
  await page.evaluate(
    () => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))),
  );
}

const COUNTED = tallyOf([
  { kind: 'crop', crop: 'dense' },
  { kind: 'good', bales: 60 },
  { kind: 'miss', side: 'left' },
]);

const DAY_ASKED: FigureDialogue = {
  figure: 'figure.wearDate',
  values: {},
  known: [],
  asking: 'today',
  notices: [],
  system: 'inch',
};

/** Moments of one job, in order; each is reached from the one before. */
export const MOMENTS: readonly { readonly name: string; readonly reach: (page: Page) => Promise<void> }[] = [
  { name: 'opening', reach: (page) => walkTo(page, 'job.inquiry.opening') },
  { name: 'stopping', reach: (page) => walkTo(page, 'job.safety.stopping.keyInPocket') },
  {
    name: 'voice heard',
    reach: async (page) => {
      await walkTo(page, 'job.inquiry.triage');
      await act(page, {
        voice: { kind: 'on', isWarm: true },
        turn: 'hearing',
        level: { dbfs: -20, floorDbfs: -55, snrDb: 24, hearing: 'good' },
        lastHeard: {
          words: 'i see the flywheel has stopped',
          outcome: 'taken',
          takenFor: 'i see the flywheel has stopped',
        },
      });
    },
  },
  { name: 'look-only check', reach: (page) => walkTo(page, 'job.inquiry.heldStrandLost', ['finding.clean']) },
  {
    name: 'lockout',
    reach: (page) =>
      walkTo(page, 'job.safety.lockingOut.densityReleased', [
        'finding.clean',
        'finding.sound',
        'finding.balesSame',
      ]),
  },
  { name: 'voided', reach: (page) => press(page, 'void.someoneAtTractor') },
  {
    name: 'number asked',
    reach: (page) =>
      walkTo(page, 'job.inquiry.heldStrandLost.holderPull', [
        'finding.clean',
        'finding.sound',
        'finding.balesSame',
        'finding.smooth',
        'finding.dragsEven',
      ]),
  },
  { name: 'number sheet', reach: (page) => page.getByRole('button', { name: 'Tap in the number' }).click() },
  {
    name: 'number read back',
    reach: async (page) => {
      await page.getByRole('button', { name: '2', exact: true }).click();
      await page.getByRole('button', { name: '5', exact: true }).click();
      await page.getByRole('button', { name: 'Give it' }).click();
    },
  },
  { name: 'remedy', reach: (page) => walkTo(page, 'job.inquiry.remedy') },
  {
    name: 'other words',
    reach: (page) => page.getByRole('button', { name: 'More', exact: true }).click(),
  },
  { name: 'where to look', reach: (page) => page.getByRole('button', { name: 'Show me where' }).click() },
  {
    name: 'one tie',
    reach: async (page) => {
      await press(page, 'tying.open');
      await press(page, 'tying.next');
    },
  },
  {
    name: 'miss rate asked',
    reach: async (page) => {
      await page.getByRole('button', { name: 'Back to the question' }).click();
      await walkTo(page, 'job.inquiry.proving.askingRate');
    },
  },
  { name: 'proof planned', reach: (page) => walkTo(page, 'job.inquiry.proving.planned') },
  {
    name: 'counting ties',
    reach: async (page) => {
      await walkTo(page, 'job.inquiry.proving.running');
      await press(page, 'tie.good');
      await press(page, 'tie.good');
    },
  },
  { name: 'closed', reach: (page) => walkTo(page, 'closed') },
  { name: 'record read', reach: (page) => press(page, 'recall.record') },
  {
    name: 'counting bales',
    reach: async (page) => {
      await page.getByRole('button', { name: 'Back to the question' }).click();
      await act(page, { tally: COUNTED, prompt: countPrompt(COUNTED, ['Good bale.'], new TestJob().prompt) });
      await page.locator('.count-panel svg').waitFor();
    },
  },
  {
    name: 'day asked',
    reach: (page) =>
      act(page, {
        prompt: figurePrompt(DAY_ASKED, new TestJob().prompt),
        answers: { shown: ['number'], page: 0, pages: 1 },
      }),
  },
  {
    name: 'day sheet',
    reach: async (page) => {
      await page.getByRole('button', { name: 'Tap in the day' }).click();
      await page.getByRole('button', { name: 'February' }).click();
      await page.getByRole('button', { name: '3', exact: true }).click();
      await page.getByRole('button', { name: '0', exact: true }).click();
    },
  },
];

/** Number 0 at the second level: the flywheel is still turning when it is asked for. */
const DRILL = '0';

/** Moments of one drill that ends in a fatal error, in order, from the start of the app. */
export const DRILL_MOMENTS: typeof MOMENTS = [
  {
    name: 'drill set-up',
    reach: async (page) => {
      await page.evaluate(() => {
        location.hash = '#/drill';
      });
      await page.getByRole('button', { name: /^2:/ }).click();
      await page.getByRole('textbox', { name: /Number of the drill/ }).fill(DRILL);
    },
  },
  {
    name: 'drill hazard',
    reach: async (page) => {
      await page.getByRole('button', { name: 'Begin the drill' }).click();
      await walkTo(page, 'job.safety.stopping.flywheelStopped');
    },
  },
  { name: 'drill stopped', reach: (page) => walkTo(page, 'drill.stopped') },
  { name: 'debrief said', reach: (page) => walkTo(page, 'drill.debrief.2') },
  { name: 'debrief', reach: (page) => page.getByRole('button', { name: 'See the debrief' }).click() },
];
