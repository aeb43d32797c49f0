import type { Worksheet } from '../../worksheet/schema/document.ts'
import { FileError, openFile } from './file.ts'

/** A folder of sheets may lie beside the app; another server is never asked, and the page's policy would refuse it. */
function addressFor(path: string, base: string): URL {
  const address = URL.canParse(path, base) ? new URL(path, base) : undefined
  if (!address || address.origin !== new URL(base).origin)
    throw new FileError(
      'Only sheets on the same server as this page can be opened by a link. Save the file, then open it.',
    )
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
    throw new FileError(`${name} could not be fetched: the server does not answer. Try again later.`, { cause: error })
  }
  if (!answer.ok) throw new FileError(`${name} is not on the server, or it may not be read (${answer.status}).`)
  return openFile(Object.assign(await answer.blob(), { name }))
}
