import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'

const PREFIX = 'evenfield-t-'

/** Gives the tests, and the programs they start, a folder of their own for temporary files, and removes it at the end. */
export default function setup(): (() => void) | undefined {
  const outside = process.env.TMPDIR
  // Each project asks for one. Folders within folders would make the paths of Chromium's sockets too long.
  if (outside !== undefined && basename(outside).startsWith(PREFIX)) return undefined
  const folder = mkdtempSync(join(tmpdir(), PREFIX))
  process.env.TMPDIR = folder
  return () => {
    if (outside === undefined) delete process.env.TMPDIR
    else process.env.TMPDIR = outside
    try {
      rmSync(folder, { recursive: true, force: true, maxRetries: 5 })
    } catch (error) {
      // A killed browser may still write there. No test has failed because of that.
      console.warn(`${folder} could not be removed: ${(error as Error).message}`)
    }
  }
}
