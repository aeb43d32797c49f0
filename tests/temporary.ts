import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

/** Gives the tests, and the programs they start, a folder of their own for temporary files, and removes it at the end. */
export default function setup(): () => void {
  const outside = process.env.TMPDIR
  const folder = mkdtempSync(join(tmpdir(), 'evenfield-test-'))
  process.env.TMPDIR = folder
  return () => {
    if (outside === undefined) delete process.env.TMPDIR
    else process.env.TMPDIR = outside
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 })
  }
}
