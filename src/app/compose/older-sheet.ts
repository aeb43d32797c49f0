import { arranged, olderJobsIn } from '../../worksheet/compose/arrange.ts'
import type { PartLibrary } from '../../worksheet/compose/part-library.ts'
import { partsOf, type Recomposed } from '../../worksheet/compose/recompose.ts'
import type { Worksheet } from '../../worksheet/index.ts'
import { template } from '../templates/templates.ts'

/** How a worksheet is composed again. */
export type Recompose = (library: PartLibrary, worksheet: Worksheet) => Recomposed

/** How a worksheet of an earlier version is arranged by parts; undefined where it is made otherwise. */
export async function arrangement(worksheet: Worksheet): Promise<Recompose | undefined> {
  const { default: older } = await import('../../../templates/older/version-1.json')
  const names = olderJobsIn(worksheet, older)
  if (names.length === 0) return undefined
  const jobs = await Promise.all(names.map(async (name) => [name, await template(name)] as const))
  const parts = new Map(jobs.map(([name, job]) => [name, job ? partsOf(job) : []]))
  return (library, now) => arranged(library, now, older, parts)
}
