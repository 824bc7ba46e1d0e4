import type { Page } from 'playwright-core';

/** Takes every file of the recogniser's store whose name has this part, as a browser short of room does. */
export function loseModelFiles(page: Page, partOfName: string): Promise<void> {
  return page.evaluate(async (part) => {
    const database = await new Promise<IDBDatabase>((resolve) => {
      const request = indexedDB.open('/vosk', 21);
      request.onsuccess = () => resolve(request.result);
    });
    await new Promise<void>((resolve) => {
      const transaction = database.transaction('FILE_DATA', 'readwrite');
      transaction.oncomplete = () => resolve();
      const store = transaction.objectStore('FILE_DATA');
      store.getAllKeys().onsuccess = (event) => {
        const keys = (event.target as IDBRequest<IDBValidKey[]>).result;
        for (const key of keys) if (String(key).includes(part)) store.delete(key);
      };
    });
    database.close();
  }, partOfName);
}
