import { createRequire } from 'node:module';
import type { AxeResults, RunOptions } from 'axe-core';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { ConversationView } from '../../src/session/view.ts';
import { launchChromium } from './chromium.ts';
import { serveScreensPage } from './screens-server.ts';
import {
  act,
  beginJob,
  DRILL_MOMENTS,
  LOOKS,
  MOMENTS,
  openApp,
  press,
  settled,
  TABLETS,
  THEMES,
  walkTo,
} from './screens-walk.ts';
import type { ServedBuild } from './serve-build.ts';

declare const axe: { run(options: RunOptions): Promise<AxeResults> };

/** What Chromium tells of a piece that moved without being new. */
interface LayoutShift extends PerformanceEntry {
  readonly sources: readonly { readonly node: Node | null }[];
}

const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

/** WCAG 2.2 success criterion 1.4.6 asks 7:1 of text; axe holds it against what the browser computes. */
const AXE_RULES: RunOptions = {
  resultTypes: ['violations'],
  rules: { 'color-contrast-enhanced': { enabled: true }, 'target-size': { enabled: true } },
};

/** 20 mm and 3 mm at 96 dots an inch: keys of 20 mm serve a finger as well as larger ones (Colle & Hiszem 2004). */
const TARGET_PX = 75.5;
const GAP_PX = 11.3;
const SMALLEST_TEXT_PX = 24;

/**
 * Least height of a capital for what has to be read, minutes of arc: ISO 9241-303, from memory and not checked
 * against the text of the standard.
 */
const LEAST_LETTER_ARCMIN = 16;
const READ_FROM_MM = 1500;
const MM_PER_PX = 25.4 / 96;

const LEVEL = { dbfs: -20, floorDbfs: -55, snrDb: 4, hearing: 'too loud' } as const;

/** Everything the voice can show beside the question. */
const VOICES: readonly Partial<ConversationView>[] = [
  { voice: { kind: 'starting', share: 0.995 } },
  { voice: { kind: 'on', isWarm: false }, turn: 'quiet', level: LEVEL },
  ...(['speaking', 'listening', 'hearing', 'thinking', 'resting', 'quiet'] as const).map((turn) => ({
    voice: { kind: 'on', isWarm: true } as const,
    turn,
    level: LEVEL,
    hearing: turn === 'resting' ? LEVEL.hearing : ('good' as const),
  })),
  { voice: { kind: 'failed', sentence: 'The microphone is refused. Touch still works. '.repeat(4) } },
  { voice: { kind: 'off' } },
];

let server: ServedBuild;
let browser: Browser;
let context: BrowserContext;

beforeAll(async () => {
  [server, browser] = await Promise.all([serveScreensPage(), launchChromium()]);
});

afterAll(async () => {
  await Promise.all([server?.close(), browser?.close()]);
});

afterEach(() => context?.close());

describe.each(LOOKS)('a job on a tablet of $tablet, in the $theme theme', ({ viewport, theme }) => {
  it('has no barrier axe knows, no small text and no small target', async () => {
    context = await browser.newContext({ viewport });
    const page = await openApp(context, server.url, { theme });
    await page.addScriptTag({ path: AXE });
    await beginJob(page);
    for (const { name, reach } of MOMENTS) {
      await reach(page);
      await settled(page);
      expect(await violations(page), name).toEqual([]);
      expect(await smallTexts(page), name).toEqual([]);
      expect(await clippedLabels(page), name).toEqual([]);
      expect(await smallTargets(page), name).toEqual([]);
      expect(await crowdedTargets(page), name).toEqual([]);
    }
  });
});

describe.each(Object.entries(TABLETS))('a job on a tablet of %s', (_, viewport) => {
  it('keeps every piece in its place from question to question', async () => {
    context = await browser.newContext({ viewport });
    const page = await openApp(context, server.url);
    await beginJob(page);
    const before = await places(page);
    for (const voice of VOICES) {
      await act(page, voice);
      await settled(page);
      expect(await places(page), JSON.stringify(voice)).toEqual(before);
    }
    await page.evaluate(() => {
      const shifts: string[] = [];
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries() as LayoutShift[]) {
          shifts.push(
            ...entry.sources.map(({ node }) => (node as Element | null)?.outerHTML.slice(0, 120) ?? ''),
          );
        }
      }).observe({ type: 'layout-shift' });
      Object.assign(window, { shifts });
    });
    for (const until of [
      'job.safety.stopping',
      'job.inquiry.triage',
      'job.inquiry.heldStrandLost',
      'job.safety.lockingOut',
      'job.inquiry.remedy',
    ]) {
      await walkTo(page, until);
      expect(await places(page), until).toEqual(before);
    }
    expect(await page.evaluate(() => (window as unknown as { shifts: string[] }).shifts)).toEqual([]);
  });

  it('reads at a metre and a half', async () => {
    context = await browser.newContext({ viewport });
    const page = await openApp(context, server.url);
    await beginJob(page);
    for (const until of [
      'job.inquiry.opening',
      'job.safety.stopping',
      'job.inquiry.triage',
      'job.inquiry.remedy',
    ]) {
      await walkTo(page, until);
      expect(await letterAngle(page, '.question'), until).toBeGreaterThanOrEqual(LEAST_LETTER_ARCMIN);
      expect(await letterAngle(page, '.safety-word'), until).toBeGreaterThanOrEqual(14);
    }
  });

  it('can be done with twice the size of text', async () => {
    context = await browser.newContext({ viewport });
    const page = await openApp(context, server.url, { textSize: 200 });
    await beginJob(page);
    for (const { name, reach } of MOMENTS) {
      await reach(page);
      await settled(page);
      expect(await overflowing(page), name).toEqual([]);
      expect(await isInSight(page, 'Stop'), name).toBe(true);
    }
  });
});

describe('the pages beside a job', () => {
  const pages = ['', 'new', 'records', 'machines', 'settings', 'help', 'welcome'];

  it.each(THEMES)('have no barrier axe knows and no small target, in the %s theme', async (theme) => {
    context = await browser.newContext({ viewport: TABLETS['ten inch, portrait'] });
    const page = await openApp(context, server.url, { theme });
    await page.addScriptTag({ path: AXE });
    for (const name of pages) {
      await page.goto(`${server.url}#/${name}`);
      await page.waitForSelector('.page');
      if (name === 'records') await page.getByRole('heading', { name: 'Files' }).waitFor();
      await settled(page);
      expect(await violations(page), name).toEqual([]);
      expect(await smallTargets(page), name).toEqual([]);
      expect(await overflowing(page), name).toEqual([]);
    }
  });

  it('show the first run to whoever has not been through it, and only to them', async () => {
    context = await browser.newContext();
    const page = await context.newPage();
    await page.goto(server.url);
    await page.getByRole('button', { name: 'I have read that' }).click();
    await page.getByRole('button', { name: 'Go on with buttons only' }).click();
    await page.getByRole('link', { name: 'New job' }).waitFor();
    await page.reload();
    await page.getByRole('link', { name: 'New job' }).waitFor();
    await page.evaluate(() => localStorage.clear());
    await page.reload();
    await page.getByRole('button', { name: 'I have read that' }).waitFor();
  });

  it('keep a baler and offer it for a job', async () => {
    context = await browser.newContext();
    const page = await openApp(context, server.url);
    await page.goto(`${server.url}#/machines`);
    await page.getByRole('button', { name: 'Add a baler' }).click();
    await page.getByRole('button', { name: 'Keep it' }).click();
    expect(await page.getByRole('alert').textContent()).toContain('name');
    await page.getByLabel('What you call it').fill('The old red one');
    await page.getByRole('button', { name: 'Keep it' }).click();
    await page.getByRole('button', { name: 'The old red one' }).waitFor();
    await page.goto(`${server.url}#/new`);
    await page.getByRole('button', { name: 'The old red one' }).click();
    await page.getByRole('button', { name: 'Begin' }).click();
    await page.waitForSelector('.job');
  });

  it('list an open job under what was said in it, and go on with it', async () => {
    context = await browser.newContext();
    const page = await openApp(context, server.url);
    await beginJob(page);
    await press(page, 'symptom.heldStrandLost');
    await page.getByRole('button', { name: 'More', exact: true }).click();
    await page.getByRole('button', { name: 'Leave it for now' }).click();
    await page.getByRole('link', { name: 'It keeps letting go' }).click();
    await page.waitForSelector('.job');
    expect(await page.locator('.strand-knots').getAttribute('aria-label')).toBe('One answer so far');
  });

  it('show the card of a job that is closed', async () => {
    context = await browser.newContext();
    const page = await openApp(context, server.url);
    await beginJob(page);
    await walkTo(page, 'closed');
    await page.getByRole('button', { name: 'See the job card' }).click();
    await page.getByRole('heading', { name: 'Found' }).waitFor();
    await page.getByRole('button', { name: 'One page to hand over' }).click();
    await page.getByRole('heading', { name: 'Machine as left' }).waitFor();
  });
});

describe('the safety state', () => {
  it('is told by word and shape, different in every state, and by place and colour', async () => {
    context = await browser.newContext({ viewport: TABLETS['thirteen inch, landscape'] });
    const page = await openApp(context, server.url);
    await beginJob(page);
    const seen = [await plate(page)];
    for (const [until, ...instead] of [
      ['job.safety.stopping'],
      ['job.inquiry.triage'],
      ['job.safety.lockingOut.knotterHome'],
      ['job.safety.finishingCycle.turning', 'lockout.knotterTripped'],
      ['job.inquiry.remedy'],
      ['job.inquiry.proving.running'],
    ] as const) {
      await walkTo(page, until, instead);
      seen.push(await plate(page));
    }
    expect(seen.map(({ word }) => word)).toEqual([
      'Keep out',
      'Stopping',
      'Eyes only',
      'This step',
      'Rim only',
      'Locked out',
      'In the seat',
    ]);
    expect(new Set(seen.map(({ shape }) => shape)).size).toBe(seen.length);
    expect(new Set(seen.map(({ colour }) => colour)).size).toBe(seen.length);
    expect(seen.map(({ place }) => place)).toEqual([
      'Out',
      'Out, leaving',
      'Eyes',
      'Eyes, leaving',
      'Rim',
      'Hands',
      'Seat',
    ]);
  });
});

describe('what is on the screen and can be said', () => {
  beforeEach(async () => {
    context = await browser.newContext({ viewport: TABLETS['thirteen inch, landscape'] });
  });

  it('is numbered, and the second one is the second one', async () => {
    const page = await openApp(context, server.url);
    await beginJob(page);
    await walkTo(page, 'job.inquiry.triage.knotPlace');
    // Seven answers: three of them, and the place that leads to the others.
    expect(await page.locator('.answer-tags .tag-number').allTextContents()).toEqual(['1', '2', '3']);
    const second = await page.evaluate(() => {
      const shown = window.screensPage?.conversation().view.value.answers.shown[1];
      return shown === 'number' ? undefined : shown?.meaning;
    });
    await press(page, 'point.second');
    const answers = await page.evaluate(() => window.screensPage?.conversation().view.value.context.answers);
    expect(answers?.at(-1)).toEqual({ question: 'evidence.knotPlace', said: second });
  });

  it('bears no number where only its own words confirm it', async () => {
    const page = await openApp(context, server.url);
    await beginJob(page);
    await walkTo(page, 'job.safety.lockingOut.knotterHome');
    expect(await page.locator('.tag-number').count()).toBe(0);
    const before = await page.locator('.question').innerText();
    await press(page, 'point.first');
    expect(await page.locator('.question').innerText()).toBe(before);
  });

  it('steps one tie, and goes back to the question', async () => {
    const page = await openApp(context, server.url);
    await beginJob(page);
    await press(page, 'tying.open');
    await page.getByText('1. The bale grows').waitFor();
    await press(page, 'tying.next');
    await page.getByText('2. Trip').waitFor();
    await page.getByRole('button', { name: 'Next', exact: true }).click();
    await page.getByText('3. Needle up').waitFor();
    await press(page, 'tying.back');
    await page.getByText('2. Trip').waitFor();
    await page.getByRole('button', { name: 'Back to the question' }).click();
    await page.getByRole('heading', { level: 1, name: /What is the knotter doing/ }).waitFor();
  });
});

describe.each(LOOKS)('a drill on a tablet of $tablet, in the $theme theme', ({ viewport, theme }) => {
  it('has no barrier axe knows from set-up to debrief', async () => {
    context = await browser.newContext({ viewport });
    const page = await openApp(context, server.url, { theme });
    await page.addScriptTag({ path: AXE });
    for (const { name, reach } of DRILL_MOMENTS) {
      await reach(page);
      await settled(page);
      expect(await violations(page), name).toEqual([]);
      expect(await smallTexts(page), name).toEqual([]);
    }
    await page.getByText('Stopped by a fatal error').waitFor();
    await page.getByRole('button', { name: 'Another drill' }).click();
    await page.evaluate(() => {
      location.hash = '#/records';
    });
    await page.getByRole('heading', { name: 'Records' }).waitFor();
    expect(await page.locator('.job-list a').count()).toBe(0);
  });
});

describe.each(Object.entries(TABLETS))('a drill on a tablet of %s', (_, viewport) => {
  it('has no small target, and refuses what is no number of a drill', async () => {
    context = await browser.newContext({ viewport });
    const page = await openApp(context, server.url);
    const [setUp, hazard] = DRILL_MOMENTS;
    await setUp?.reach(page);
    await page.getByRole('textbox', { name: /Number of the drill/ }).fill('nine');
    await page.getByText('That is no number from 0 to 9999.').waitFor();
    await page.getByRole('button', { name: 'Begin the drill' }).click();
    await page.getByRole('textbox', { name: /Number of the drill/ }).fill('0');
    await hazard?.reach(page);
    await page.getByText('The flywheel is still ticking round.').waitFor();
    expect(await smallTargets(page)).toEqual([]);
    expect(await crowdedTargets(page)).toEqual([]);
  });
});

describe('getting about', () => {
  beforeEach(async () => {
    context = await browser.newContext({ viewport: TABLETS['thirteen inch, landscape'] });
  });

  it('works with the keys of a keyboard or a switch alone', async () => {
    const page = await openApp(context, server.url);
    await beginJob(page);
    await tabTo(page, 'It keeps letting go');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: /Tell everyone/ }).waitFor();
    await tabTo(page, 'More');
    await page.keyboard.press('Space');
    await page.getByRole('heading', { name: 'Other words' }).waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('heading', { level: 1, name: /Tell everyone/ }).waitFor();
    await tabTo(page, 'Stop');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: /Hands out/ }).waitFor();
  });

  it('shows every answer of a long list, three at a time', async () => {
    const page = await openApp(context, server.url);
    await beginJob(page);
    const seen = new Set<string>();
    for (let step = 0; step < 3; step += 1) {
      const labels = await page.locator('.answer-tags button').allInnerTexts();
      expect(labels.length).toBeLessThanOrEqual(4);
      for (const label of labels.slice(0, -1)) seen.add(label);
      await page.getByRole('button', { name: 'More answers' }).click();
    }
    expect(seen.size).toBe(9);
  });

  it('keeps a half-tapped number when the tablet is turned', async () => {
    const page = await openApp(context, server.url);
    await beginJob(page);
    await walkTo(page, 'job.inquiry.proving.askingRate');
    await page.getByRole('button', { name: 'Tap in the number' }).click();
    await page.getByRole('button', { name: '7', exact: true }).click();
    await page.setViewportSize(TABLETS['ten inch, portrait']);
    await page.getByRole('button', { name: '7 missed' }).waitFor();
  });

  it('stays at its question, in the middle of being answered, when the tablet is turned or the screen is split', async () => {
    const page = await openApp(context, server.url);
    await beginJob(page);
    await walkTo(page, 'job.inquiry.triage');
    await act(page, { voice: { kind: 'on', isWarm: true }, turn: 'hearing', level: LEVEL });
    const question = await page.locator('.question').innerText();
    const third = await page.locator('.tag-label').nth(2).innerText();
    for (const size of [
      TABLETS['ten inch, portrait'],
      { width: 480, height: 800 },
      { width: 1280, height: 400 },
      TABLETS['thirteen inch, landscape'],
    ]) {
      await page.setViewportSize(size);
      await settled(page);
      expect(await page.locator('.question').innerText()).toBe(question);
      expect(await page.locator('[data-turn]').first().getAttribute('data-turn')).toBe('hearing');
      expect(await overflowing(page), JSON.stringify(size)).toEqual([]);
      expect(await isInSight(page, 'Stop'), JSON.stringify(size)).toBe(true);
    }
    await page.setViewportSize({ width: 480, height: 800 });
    await page.getByRole('button', { name: third }).click();
    await page.setViewportSize(TABLETS['ten inch, portrait']);
    const answers = await page.evaluate(() => window.screensPage?.conversation().view.value.context.answers);
    expect(answers?.map(({ question: asked }) => asked)).toEqual(['symptom', 'evidence.knotPlace']);
  });

  it('can be done where the whole tablet is set to letters of twice the size', async () => {
    const page = await openApp(context, server.url);
    const session = await context.newCDPSession(page);
    await session.send('Page.setFontSizes', { fontSizes: { standard: 32, fixed: 26 } });
    await page.setViewportSize(TABLETS['eight inch, landscape']);
    await page.reload();
    await beginJob(page);
    expect(await page.evaluate(() => getComputedStyle(document.documentElement).fontSize)).toBe('32px');
    for (const { name, reach } of MOMENTS.slice(0, 6)) {
      await reach(page);
      await settled(page);
      expect(await overflowing(page), name).toEqual([]);
      expect(await isInSight(page, 'Stop'), name).toBe(true);
    }
  });

  it('refuses more misses than bales with a sentence', async () => {
    const page = await openApp(context, server.url);
    await beginJob(page);
    await walkTo(page, 'job.inquiry.proving.askingRate');
    await page.getByRole('button', { name: 'Tap in the number' }).click();
    await page.getByRole('button', { name: '9', exact: true }).click();
    await page.getByRole('button', { name: 'bales' }).click();
    await page.getByRole('button', { name: '4', exact: true }).click();
    await page.getByText('There cannot be more misses than bales.').waitFor();
    // A press that means nothing yet is not swallowed by the browser, and gives nothing.
    await page.getByRole('button', { name: 'Give it' }).click({ force: true });
    await page.getByText('There cannot be more misses than bales.').waitFor();
  });

  it('moves nothing where motion is not wanted', async () => {
    const page = await openApp(context, server.url);
    await beginJob(page);
    await act(page, { voice: { kind: 'on', isWarm: true }, turn: 'speaking' });
    await settled(page);
    const running = () => page.evaluate(() => document.getAnimations().length);
    expect(await running()).toBeGreaterThan(0);
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await settled(page);
    expect(await running()).toBe(0);
  });

  it('fits half a screen', async () => {
    const page = await openApp(context, server.url);
    await page.setViewportSize({ width: 480, height: 800 });
    await beginJob(page);
    await walkTo(page, 'job.inquiry.triage');
    expect(await overflowing(page)).toEqual([]);
    expect(await isInSight(page, 'Stop')).toBe(true);
  });

  it('says what could not be kept, and why there is no voice', async () => {
    const page = await openApp(context, server.url);
    await beginJob(page);
    await act(page, { voice: { kind: 'failed', sentence: 'The microphone is refused. Touch still works.' } });
    await page.getByText('The microphone is refused.').waitFor();
    await act(page, { record: { kind: 'notKept', sentence: 'The tablet is full.' } });
    await page.getByText('The tablet is full.').waitFor();
  });

  it('keeps the screen awake while a job is open, with one lock however often the page is shown, and no longer', async () => {
    await context.addInitScript(() => {
      const held = new Set<object>();
      const request = async () => {
        const lock = { release: async () => void held.delete(lock) };
        held.add(lock);
        return lock;
      };
      Object.defineProperty(navigator, 'wakeLock', { value: { request } });
      Object.assign(window, { held });
    });
    const page = await openApp(context, server.url);
    const held = () => page.evaluate(() => (window as unknown as { held: Set<object> }).held.size);
    expect(await held()).toBe(0);
    await beginJob(page);
    expect(await held()).toBe(1);
    await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
    expect(await held()).toBe(1);
    await page.getByRole('button', { name: 'More', exact: true }).click();
    await page.getByRole('button', { name: 'Leave it for now' }).click();
    await page.getByRole('link', { name: 'New job' }).waitFor();
    await expect.poll(held).toBe(0);
  });

  it('stands back in a second tab and says so', async () => {
    const first = await openApp(context, server.url);
    const second = await openApp(context, `${server.url}#/new`);
    expect(await second.getByRole('alert').textContent()).toContain('another tab');
    expect(await second.getByRole('button', { name: 'Begin' }).count()).toBe(0);
    await first.close();
    await second.getByRole('button', { name: 'Try again' }).click();
    await second.getByRole('button', { name: 'Begin' }).waitFor();
  });
});

describe('the pictures', () => {
  it('all say in words what they show', async () => {
    context = await browser.newContext({ viewport: { width: 1900, height: 1000 } });
    const page = await context.newPage();
    await page.goto(`${server.url}pictures.html`);
    await page.waitForSelector('.drawing');
    await page.addScriptTag({ path: AXE });
    expect(await violations(page)).toEqual([]);
    const names = await page
      .locator('.drawing')
      .evaluateAll((drawings) => drawings.map((d) => d.getAttribute('aria-label')));
    expect(names.length).toBeGreaterThan(29);
    expect(new Set(names).size).toBe(names.length);
  });

  it('light exactly the part they name, inside what is shown', async () => {
    context = await browser.newContext({ viewport: { width: 1900, height: 1000 } });
    const page = await context.newPage();
    await page.goto(`${server.url}pictures.html`);
    await page.waitForSelector('.drawing');
    const strayed = await page.locator('.part-picture .drawing:has(.ring)').evaluateAll((drawings) =>
      drawings.flatMap((drawing) => {
        const lit = drawing.querySelector('[data-lit="true"]')?.getBoundingClientRect();
        const ring = drawing.querySelector('.ring')?.getBoundingClientRect();
        const frame = drawing.getBoundingClientRect();
        const name = drawing.getAttribute('aria-label');
        if (!lit || !ring) return [`${name}: nothing is lit`];
        const meets =
          lit.left < ring.right && lit.right > ring.left && lit.top < ring.bottom && lit.bottom > ring.top;
        const isShown =
          ring.left > frame.left - 12 && ring.right < frame.right + 12 && ring.bottom < frame.bottom + 12;
        return meets && isShown ? [] : [`${name}: the ring is elsewhere`];
      }),
    );
    expect(strayed).toEqual([]);
  });
});

async function violations(page: Page): Promise<readonly string[]> {
  const { violations: found } = await page.evaluate((options) => axe.run(options), AXE_RULES);
  return found.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
}

/** Every piece of text under the smallest size, as it is drawn. */
function smallTexts(page: Page): Promise<readonly string[]> {
  return page.evaluate((smallest) => {
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const small: string[] = [];
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const holder = node.parentElement;
      if (!holder || !node.textContent?.trim() || !holder.checkVisibility()) continue;
      const scale = holder instanceof SVGGraphicsElement ? (holder.getScreenCTM()?.a ?? 1) : 1;
      const size = Number.parseFloat(getComputedStyle(holder).fontSize) * scale;
      if (size < smallest - 0.01) small.push(`${node.textContent.trim()} (${size.toFixed(1)} px)`);
    }
    return small;
  }, SMALLEST_TEXT_PX);
}

/** Answers whose words do not fit on their tag: what is cut off cannot be said. */
function clippedLabels(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('.tag')].flatMap((tag) => {
      const label = tag.querySelector('.tag-label')?.getBoundingClientRect();
      const box = tag.getBoundingClientRect();
      const fits = !label || (label.top >= box.top && label.bottom <= box.bottom && label.right <= box.right);
      return fits ? [] : [tag.innerText];
    }),
  );
}

/** Height of a capital letter as it is drawn, seen from where the tablet is read, minutes of arc. */
async function letterAngle(page: Page, selector: string): Promise<number> {
  const px = await page.locator(selector).evaluate((element) => {
    const { fontWeight, fontSize, fontFamily } = getComputedStyle(element);
    const pen = document.createElement('canvas').getContext('2d');
    if (!pen) throw new Error('The browser draws no text.');
    pen.font = `${fontWeight} ${fontSize} ${fontFamily}`;
    return pen.measureText('H').actualBoundingBoxAscent;
  });
  return (60 * 180 * Math.atan((px * MM_PER_PX) / READ_FROM_MM)) / Math.PI;
}

function smallTargets(page: Page): Promise<readonly string[]> {
  return page.evaluate(
    (least) =>
      [...document.querySelectorAll<HTMLElement>('button, a, input')]
        .filter((target) => target.checkVisibility())
        .map((target) => ({ name: target.innerText, box: target.getBoundingClientRect() }))
        .filter(({ box }) => box.width < least || box.height < least)
        .map(({ name, box }) => `${name} (${box.width} by ${box.height})`),
    TARGET_PX,
  );
}

/** Pairs of targets nearer to each other than the gap a finger needs. */
function crowdedTargets(page: Page): Promise<readonly string[]> {
  return page.evaluate((gap) => {
    const targets = [...document.querySelectorAll<HTMLElement>('.job button')]
      .filter((target) => target.checkVisibility() && isDrawn(target))
      .map((target) => ({ name: target.innerText, box: shownBox(target) }));
    return targets.flatMap((a, at) =>
      targets.slice(at + 1).flatMap((b) => {
        const across = Math.max(b.box.left - a.box.right, a.box.left - b.box.right);
        const along = Math.max(b.box.top - a.box.bottom, a.box.top - b.box.bottom);
        return Math.max(across, along) < gap ? [`${a.name} and ${b.name}`] : [];
      }),
    );

    /** What is left of a target where its page scrolls. */
    function shownBox(target: HTMLElement) {
      const box = target.getBoundingClientRect();
      const page = target.closest('.sheet-body')?.getBoundingClientRect() ?? box;
      return {
        left: box.left,
        right: box.right,
        top: Math.max(box.top, page.top),
        bottom: Math.min(box.bottom, page.bottom),
      };
    }

    /** Not scrolled away under something else. */
    function isDrawn(target: HTMLElement): boolean {
      const { left, top, width, height } = target.getBoundingClientRect();
      const onTop = document.elementFromPoint(left + width / 2, top + height / 2);
      return onTop !== null && target.contains(onTop);
    }
  }, GAP_PX);
}

/** What is wider than the place it has. */
function overflowing(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('html, main, button, section, h1, p, li')]
      .filter((element) => element.checkVisibility() && element.scrollWidth > element.clientWidth + 1)
      .filter((element) => element.clientWidth > 1 && !element.closest('.for-ears'))
      .map((element) => `${element.tagName}.${element.className}: ${element.innerText.slice(0, 40)}`),
  );
}

async function isInSight(page: Page, name: string): Promise<boolean> {
  const box = await page.getByRole('button', { name, exact: true }).boundingBox();
  const size = page.viewportSize();
  if (!box || !size) return false;
  return box.x >= 0 && box.y >= 0 && box.x + box.width <= size.width && box.y + box.height <= size.height;
}

/** Where the pieces stand that must never move. */
function places(page: Page): Promise<unknown> {
  return page.evaluate(() => {
    const box = (selector: string) => {
      const { x, y, width, height } = document.querySelector(selector)?.getBoundingClientRect() ?? {};
      return [x, y, width, height];
    };
    const buttons = [...document.querySelectorAll('.fixed-bar button')].map((button) => {
      const { x, y } = button.getBoundingClientRect();
      return [button.textContent, x, y];
    });
    return { strand: box('.strand'), question: box('.question-pane'), answers: box('.answer-tags'), buttons };
  });
}

async function plate(page: Page) {
  return page.evaluate(() => {
    const element = document.querySelector('.safety-plate');
    return {
      word: element?.querySelector('.safety-word')?.textContent,
      shape: element?.querySelector('.safety-shape')?.innerHTML,
      place: ['standing', 'leaving'].flatMap((here) =>
        [...(element?.querySelectorAll(`[data-here="${here}"]`) ?? [])].map(({ textContent }) =>
          here === 'leaving' ? `${textContent}, leaving` : `${textContent}`,
        ),
      )[0],
      colour: element ? getComputedStyle(element).backgroundColor : '',
    };
  });
}

const MOST_TABS = 40;

async function tabTo(page: Page, name: string): Promise<void> {
  for (let tabs = 0; tabs < MOST_TABS; tabs += 1) {
    await page.keyboard.press('Tab');
    const focused = await page.evaluate(() =>
      (document.activeElement as HTMLElement | null)?.innerText.replaceAll(/\s+/g, ' ').trim(),
    );
    // An answer has its number before it.
    if (focused?.replace(/^\d /, '').toLowerCase() === name.toLowerCase()) return;
  }
  throw new Error(`No number of tabs leads to ${name}.`);
}
