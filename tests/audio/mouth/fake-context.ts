/** A source that only writes down when it was told to play. */
export class FakeSource extends EventTarget {
  buffer: unknown;
  played: { readonly whenS: number; readonly offsetS: number; readonly lengthS: number } | undefined;
  stopped = false;
  connect() {}
  start(whenS: number, offsetS: number, lengthS: number) {
    this.played = { whenS, offsetS, lengthS };
  }
  stop() {
    this.stopped = true;
  }
}

/** An audio context whose clock stands still and whose sources end when the test says so. */
export class FakeContext extends EventTarget {
  state: AudioContextState = 'running';
  currentTime = 5;
  baseLatency = 0;
  outputLatency = 0;
  readonly destination = {};
  readonly sources: FakeSource[] = [];
  createGain() {
    const gain = { value: 1, setValueAtTime() {}, linearRampToValueAtTime() {} };
    return { gain, connect() {}, disconnect() {} };
  }
  createBufferSource() {
    const source = new FakeSource();
    this.sources.push(source);
    return source;
  }
  async resume() {}
  becomes(state: AudioContextState) {
    this.state = state;
    this.dispatchEvent(new Event('statechange'));
  }
  /** The fake has all the mouth uses of a context, which is far less than a whole one. */
  asContext(): AudioContext {
    return this as unknown as AudioContext;
  }
}
