import { realpathSync, writeFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { whyNoFolder } from './input.ts'
import { InputError } from './input-error.ts'
import * as words from './words.ts'

/** Writes what `--out` asks for. Throws InputError. */
export function writeOut(path: string, text: string): void {
  try {
    writeFileSync(path, text)
  } catch (error) {
    throw new InputError(words.outFailed(path, whyNoFolder(error)))
  }
}

function realPath(path: string): string {
  try {
    return realpathSync(path)
  } catch {
    return resolve(path)
  }
}

/** Refuses to write over what is read: a slip must not cost the list. Throws InputError. */
export function refuseOver(out: string, inputs: readonly string[], what: 'plan' | 'report'): void {
  if (inputs.some((input) => realPath(input) === realPath(out))) throw new InputError(words.wouldOverwrite(out, what))
}
