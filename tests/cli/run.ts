import { spawnSync } from 'node:child_process'
import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { vi } from 'vitest'
import { runCommand } from '../../src/cli/command.ts'
import { FORMAT } from '../../src/worksheet/index.ts'

const ROOT = fileURLToPath(new URL('../../', import.meta.url))

export interface Ran {
  readonly code: number | null
  readonly out: string
  readonly err: string
}

/** Runs a command as the program does, in this process: starting one anew takes longer than most commands. */
export async function evenfield(...args: string[]): Promise<Ran> {
  const printed = { stdout: '', stderr: '' }
  const catching = (['stdout', 'stderr'] as const).map((name) =>
    vi.spyOn(process[name], 'write').mockImplementation((text) => {
      printed[name] += text
      return true
    }),
  )
  try {
    const code = await runCommand(args, import.meta.url)
    return { code, out: printed.stdout, err: printed.stderr }
  } finally {
    for (const one of catching) one.mockRestore()
  }
}

/** Runs the program itself, as a terminal does, with a text on standard input. */
export function inTerminal(input: string, ...args: string[]): Ran {
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
