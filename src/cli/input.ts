import { parseArgs } from 'node:util'

/** The input cannot be read: what and where, in one plain line. */
export class InputError extends Error {}

export interface Arguments {
  /** The file, or the formula. */
  readonly subject: string
  readonly sets: readonly { readonly name: string; readonly text: string }[]
  readonly json: boolean
}

/** Reads `SUBJECT [--set name=text]… [--json]`. Throws InputError. */
export function readArguments(args: readonly string[], wanted: string): Arguments {
  const { values, positionals } = parsed(args)
  if (positionals.length !== 1) throw new InputError(`${wanted}, found ${positionals.length}`)
  return { subject: positionals[0] as string, sets: values.set.map(readSet), json: values.json }
}

function parsed(args: readonly string[]): { values: { set: string[]; json: boolean }; positionals: string[] } {
  try {
    const { values, positionals } = parseArgs({
      args: asOperands(args),
      options: { set: { type: 'string', multiple: true }, json: { type: 'boolean' } },
      allowPositionals: true,
    })
    return { values: { set: values.set ?? [], json: values.json ?? false }, positionals }
  } catch (error) {
    throw new InputError((error as Error).message)
  }
}

/** A formula may start with a minus sign: only `--set` and `--json` are options, all else is moved behind `--`. */
function asOperands(args: readonly string[]): string[] {
  const options: string[] = []
  const operands: string[] = []
  for (let i = 0; i < args.length; i++) {
    const arg = args[i] as string
    if (arg === '--json' || arg.startsWith('--set=')) options.push(arg)
    else if (arg === '--set') {
      const value = args[++i]
      if (value === undefined) throw new InputError("--set takes 'name=text'")
      options.push(`--set=${value}`)
    } else if (/^--[a-z]/.test(arg)) throw new InputError(`there is no option ${arg}; there are --set and --json`)
    else operands.push(arg)
  }
  return [...options, '--', ...operands]
}

/** Reads `name=text`. Throws InputError. */
export function readSet(text: string): { name: string; text: string } {
  const at = text.indexOf('=')
  if (at < 1) throw new InputError(`--set takes 'name=text', found '${text}'`)
  return { name: text.slice(0, at).trim(), text: text.slice(at + 1) }
}

/** Why a file cannot be read or written, in words. */
export function whyUnread(error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code
  if (code === 'ENOENT') return 'there is no such file'
  if (code === 'EISDIR') return 'this is a folder'
  return code === 'EACCES' ? 'this file is not open to you' : String(code ?? (error as Error).message)
}
