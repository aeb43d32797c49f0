import type { Worksheet } from '../../worksheet/schema/document.ts'
import { FileError, openFile } from './file.ts'
import { EXCHANGE_WORDS as WORDS } from './words.ts'

/** A folder of sheets may lie beside the app; another server is never asked, and the page's policy would refuse it. */
function addressFor(path: string, base: string): URL {
  const address = URL.canParse(path, base) ? new URL(path, base) : undefined
  if (!address || address.origin !== new URL(base).origin) throw new FileError(WORDS.sameServerOnly)
  return address
}

/** Opens a worksheet's file on the app's own server; anything wrong is a FileError. */
export async function fromServer(path: string, base = document.baseURI): Promise<Worksheet> {
  const address = addressFor(path, base)
  const name = address.pathname.split('/').at(-1) || path
  let answer: Response
  try {
    answer = await fetch(address, { redirect: 'error', headers: { Accept: 'application/json' } })
  } catch (error) {
    throw new FileError(WORDS.noAnswer(name), { cause: error })
  }
  if (!answer.ok) throw new FileError(WORDS.notOnServer(name, answer.status))
  return openFile(Object.assign(await answer.blob(), { name }))
}
