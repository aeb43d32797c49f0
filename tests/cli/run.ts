import { spawnSync } from 'node:child_process'
import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { FORMAT } from '../../src/worksheet/index.ts'

const ROOT = fileURLToPath(new URL('../../', import.meta.url))

export interface Ran {
  readonly code: number | null
  readonly out: string
  readonly err: string
}

/** Runs the program in a terminal of its own. */
export const evenfield = (...args: string[]): Ran => evenfieldWith('', ...args)

/** The same with a text on standard input. */
export function evenfieldWith(input: string, ...args: string[]): Ran {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['scripts/evenfield.mjs', ...args], {
    cwd: ROOT,
    encoding: 'utf8',
    input,
  })
  return { code: status, out: stdout, err: stderr }
}

export const json = (ran: Ran): unknown => JSON.parse(ran.out)

const folder = mkdtempSync(join(tmpdir(), 'evenfield-cli-'))

export function file(name: string, text: string): string {
  const path = join(folder, name)
  writeFileSync(path, text)
  return path
}

export const worksheet = (name: string, cells: readonly object[]): string =>
  file(name, JSON.stringify({ format: FORMAT, version: 2, title: 'A test', cells }))
