/** How a file left the app. */
export type HandedOut = 'shared' | 'saved' | 'cancelled';

/**
 * Hands a file to the person: by the tablet's own sharing where it takes such files, else as a download.
 * Must be called from a tap, or sharing is refused.
 */
export async function handOut(file: File): Promise<HandedOut> {
  if (navigator.canShare?.({ files: [file] })) {
    try {
      await navigator.share({ files: [file], title: file.name });
      return 'shared';
    } catch (error) {
      if (error instanceof DOMException && error.name === 'AbortError') return 'cancelled';
      // The tap was too long ago, or nothing on the tablet takes the file: a download still works.
    }
  }
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = file.name;
  link.click();
  // The browser has taken hold of the file long before a minute is over.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
  return 'saved';
}
