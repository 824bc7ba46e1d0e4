import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';

/**
 * A microphone that says what a test or the demo wants, turn by turn, without a seam in the product: before the page's own code
 * runs, `navigator.mediaDevices.getUserMedia` is replaced by one that gives the stream of a MediaStreamDestination. Clips
 * are played into it over a room's steady noise, so the app hears continuous sound as from a real microphone.
 *
 *     await giveSpokenMicrophone(page, { roomDbfs: -60 });
 *     await page.goto(url);
 *     await sayInto(page, spokenClip('left hand side'));
 */

/** What the page is given as `window.spokenMicrophone`. */
interface SpokenMicrophone {
  /** Plays a WAV file, its samples times `gain`; resolves with the page's clock (ms) at its last sample. */
  say(wavBase64: string, gain?: number): Promise<number>;
  /** Ends the stream's track as an unplugged device does. */
  unplug(): void;
  /** Lets nothing but exact zeros through, or the room again. */
  mute(isMuted: boolean): void;
  /** Lets the room's noise swell or die away to a loudness, evenly in decibels. */
  setRoom(dbfs: number, withinSeconds: number): void;
  /** The loudest the page's own voice has come in at so far, decibels of full scale, over some 20 ms. */
  loudestOwnVoiceDbfs(): number;
}

declare global {
  interface Window {
    spokenMicrophone: SpokenMicrophone;
  }
}

/** How fast a page speaks in tests that only wait for it to be done. */
export const HURRIED_MOUTH = 4;

/** Voices of flite that are made from recordings of people. */
export type ClipVoice = 'slt' | 'rms' | 'awb' | 'kal';

/**
 * A phrase as a 16-bit WAV file, spoken by flite.
 * @throws an Error of one line when flite is missing
 */
export function spokenClip(text: string, voice: ClipVoice = 'slt'): Buffer {
  const folder = mkdtempSync(join(tmpdir(), 'clip-'));
  const file = join(folder, 'clip.wav');
  try {
    execFileSync('flite', ['-voice', voice, '-t', text, '-o', file], { stdio: 'ignore' });
    return readFileSync(file);
  } catch {
    throw new Error('The spoken tests need flite: install it with "apt-get install flite".');
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** What the microphone hears beside the clips. */
export interface Room {
  /** Loudness of the room's noise, decibels of full scale. */
  readonly roomDbfs: number;
  /** The page's own voice as the microphone has it, decibels against what was played; it is not heard at all by default. */
  readonly ownVoiceDb?: number;
  /** How many times as fast as it should the page speaks: where nobody listens, a test is done sooner. 1 by default. */
  readonly mouthSpeed?: number;
}

/** Gives every page opened from now on the spoken microphone. */
export async function giveSpokenMicrophone(
  page: Page,
  { roomDbfs, ownVoiceDb, mouthSpeed = 1 }: Room,
): Promise<void> {
  const given = { dbfs: roomDbfs, ownVoiceDb: ownVoiceDb ?? null, mouthSpeed };
  await page.addInitScript(({ dbfs: roomDbfs, ownVoiceDb, mouthSpeed }: typeof given) => {
    const context = new AudioContext();
    const mix = new GainNode(context);
    const given: MediaStreamTrack[] = [];

    // Four seconds of an idling engine, always the same: harmonics of its firing rate (33 Hz is a four-cylinder at
    // 1,000 a minute) falling by 6 dB an octave, over low-pass noise.
    const noise = context.createBuffer(1, 4 * context.sampleRate, context.sampleRate);
    const samples = noise.getChannelData(0);
    let seed = 1;
    let low = 0;
    let power = 0;
    for (let i = 0; i < samples.length; i += 1) {
      seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
      low = 0.97 * low + 0.03 * (seed / 2 ** 31 - 1);
      const turn = (2 * Math.PI * 33 * i) / context.sampleRate;
      let sum = 4 * low;
      for (let harmonic = 1; harmonic <= 40; harmonic += 1) {
        sum += Math.sin(harmonic * turn + harmonic * harmonic) / harmonic;
      }
      samples[i] = sum;
      power += sum * sum;
    }
    const scale = 10 ** (roomDbfs / 20) / Math.sqrt(power / samples.length);
    for (let i = 0; i < samples.length; i += 1) samples[i] = (samples[i] as number) * scale;
    const room = new AudioBufferSourceNode(context, { buffer: noise, loop: true });
    const loudness = new GainNode(context);
    room.connect(loudness).connect(mix);
    room.start();

    // Whatever the page plays comes in again a little later and softer, with two reflections of a shed's walls.
    const ownVoice = new AnalyserNode(context, { fftSize: 1024 });
    let loudestPower = 0;
    if (ownVoiceDb !== null) {
      const heard = new GainNode(context, { gain: 10 ** (ownVoiceDb / 20) });
      for (const [seconds, gain] of [
        [0.008, 1],
        [0.045, 0.3],
        [0.11, 0.12],
      ] as const) {
        ownVoice
          .connect(new DelayNode(context, { delayTime: seconds }))
          .connect(new GainNode(context, { gain }))
          .connect(heard);
      }
      heard.connect(mix);
      const window20ms = new Float32Array(1024);
      setInterval(() => {
        ownVoice.getFloatTimeDomainData(window20ms);
        const sum = window20ms.reduce((total, sample) => total + sample * sample, 0);
        loudestPower = Math.max(loudestPower, (sum / window20ms.length) * 10 ** (ownVoiceDb / 10));
      }, 20);
      const connect = AudioNode.prototype.connect as (this: AudioNode, ...args: unknown[]) => AudioNode;
      const tapped = new WeakMap<BaseAudioContext, MediaStreamAudioDestinationNode>();
      AudioNode.prototype.connect = function (this: AudioNode, ...args: unknown[]) {
        const made = connect.apply(this, args);
        const own = this.context;
        if (args[0] instanceof AudioDestinationNode && own !== context && own instanceof AudioContext) {
          const tap = tapped.get(own) ?? new MediaStreamAudioDestinationNode(own);
          if (!tapped.has(own)) {
            tapped.set(own, tap);
            new MediaStreamAudioSourceNode(context, { mediaStream: tap.stream }).connect(ownVoice);
          }
          connect.call(this, tap);
        }
        return made;
      } as typeof AudioNode.prototype.connect;
    }

    if (mouthSpeed !== 1) {
      const { start } = AudioBufferSourceNode.prototype;
      AudioBufferSourceNode.prototype.start = function (when = 0, ...part) {
        if (this.context === context) return start.call(this, when, ...part);
        this.playbackRate.value = mouthSpeed;
        const now = this.context.currentTime;
        return start.call(this, now + Math.max(0, when - now) / mouthSpeed, ...part);
      };
    }

    navigator.mediaDevices.getUserMedia = async () => {
      await context.resume();
      // A stream of its own each time, as a device gives it: whoever stops one does not stop the next.
      const { stream } = mix.connect(
        new MediaStreamAudioDestinationNode(context),
      ) as MediaStreamAudioDestinationNode;
      given.push(...stream.getTracks());
      return stream;
    };
    window.spokenMicrophone = {
      async say(wavBase64, gain = 1) {
        const bytes = Uint8Array.from(atob(wavBase64), (char) => char.charCodeAt(0));
        const source = new AudioBufferSourceNode(context, {
          buffer: await context.decodeAudioData(bytes.buffer),
        });
        source.connect(new GainNode(context, { gain })).connect(mix);
        source.start();
        await new Promise((resolve) => source.addEventListener('ended', resolve, { once: true }));
        return performance.now();
      },
      unplug() {
        for (const track of given.splice(0)) {
          track.stop();
          // A script's own stop() fires no event; a device that goes does.
          track.dispatchEvent(new Event('ended'));
        }
      },
      mute(isMuted) {
        mix.gain.value = isMuted ? 0 : 1;
      },
      setRoom(dbfs, withinSeconds) {
        const now = context.currentTime;
        loudness.gain.setValueAtTime(loudness.gain.value, now);
        loudness.gain.exponentialRampToValueAtTime(10 ** ((dbfs - roomDbfs) / 20), now + withinSeconds);
      },
      // A method: tsx wraps a named arrow in a helper of its own, which the page does not have.
      loudestOwnVoiceDbfs() {
        return 10 * Math.log10(loudestPower);
      },
    };
  }, given);
}

/** Says a clip into the page, its samples times `gain`; resolves with the page's clock (ms) when it was said. */
export function sayInto(page: Page, clip: Buffer, gain = 1): Promise<number> {
  return page.evaluate(({ wavBase64, gain }) => window.spokenMicrophone.say(wavBase64, gain), {
    wavBase64: clip.toString('base64'),
    gain,
  });
}

/** Lets the room's noise swell or die away to a loudness. */
export function setRoom(page: Page, dbfs: number, withinSeconds: number): Promise<void> {
  return page.evaluate(({ dbfs, withinSeconds }) => window.spokenMicrophone.setRoom(dbfs, withinSeconds), {
    dbfs,
    withinSeconds,
  });
}
