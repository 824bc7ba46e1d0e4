/** What of the library's own module we use; it brings no types. */
declare module '@jitsi/rnnoise-wasm/dist/rnnoise-sync.js' {
  /** Emscripten's module around Xiph's rnnoise.h: addresses are byte offsets into its memory. */
  export interface RnnoiseModule {
    /** The memory as floats. It is another array after the memory has grown, so it must be asked for each time. */
    readonly HEAPF32: Float32Array;
    _malloc(bytes: number): number;
    _free(address: number): void;
    /** @param model 0 for the one inside. @returns the state's address */
    _rnnoise_create(model: 0): number;
    _rnnoise_destroy(state: number): void;
    /** Frames of 480 floats in the range of 16-bit sound, at 48 kHz. @returns how likely it holds a voice, 0 to 1 */
    _rnnoise_process_frame(state: number, out: number, frame: number): number;
  }

  export default function createModule(): RnnoiseModule;
}
