import type { Page } from 'playwright-core'

/** Changes what is saved of every sheet to what no version can read, behind the app's back. */
export const spoil = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    const answer = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((settle, fail) => {
        request.onsuccess = () => settle(request.result)
        request.onerror = () => fail(request.error)
      })
    const database = await answer(indexedDB.open('evenfield'))
    const sheets = database.transaction('worksheets', 'readwrite').objectStore('worksheets')
    for (const one of await answer(sheets.getAll()))
      await answer(
        sheets.put({ ...one, worksheet: { ...one.worksheet, cells: [{ kind: 'given', id: 'x', name: 'x' }] } }),
      )
    database.close()
  })
