import { LIBRARY } from '../functions/index.ts'
import { toLink } from '../storage/exchange/link.ts'
import { figuresOnly } from '../storage/figures/figures-only.ts'
import { Sheet, type Worksheet } from '../worksheet/index.ts'
import { readSet } from './input.ts'
import { onlyOperand, readOptions } from './options.ts'
import { readWorksheet, withSets } from './read-worksheet.ts'
import { releasedJobs } from './released-jobs.ts'
import { printLines } from './report.ts'

/**
 * `link FILE.json [--figures]`: a worksheet as one line beginning with `#`, which follows the address of the page,
 * and which `compute` reads in the place of a file. With `--figures` its results are figures in the place of formulas.
 */
export async function link(args: readonly string[]): Promise<number> {
  const { path, sets, figures } = readLinkArguments(args)
  // What puts a job on the shelf is of no use in a sheet that is sent.
  const { shelf: _, ...read } = (await readWorksheet(path)) as Worksheet & { readonly shelf?: unknown }
  const worksheet = withSets(read, sets, path)
  const sent = figures ? figuresOnly(new Sheet(worksheet, LIBRARY)) : worksheet
  printLines([`#${await toLink(sent, releasedJobs())}`])
  return 0
}

function readLinkArguments(args: readonly string[]) {
  const { values, positionals } = readOptions('link', args, {
    set: { type: 'string', multiple: true },
    figures: { type: 'boolean' },
  })
  return {
    path: onlyOperand('link', positionals),
    sets: (values.set ?? []).map(readSet),
    figures: values.figures ?? false,
  }
}
