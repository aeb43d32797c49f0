import { arranged, olderJobsIn } from '../../worksheet/compose/arrange.ts'
import type { PartLibrary } from '../../worksheet/compose/part-library.ts'
import { partsOf, type Recomposed } from '../../worksheet/compose/recompose.ts'
import type { Worksheet } from '../../worksheet/index.ts'
import { template } from '../templates/templates.ts'

/** How a worksheet is composed again. */
export type Recompose = (library: PartLibrary, worksheet: Worksheet) => Recomposed

const olderJobs = async () => (await import('../../../templates/older/version-1.json')).default

/** Whether a worksheet is of an earlier version, so that it can be arranged by parts. */
export const isOlder = async (worksheet: Worksheet): Promise<boolean> =>
  olderJobsIn(worksheet, await olderJobs()).length > 0

/** How a worksheet of an earlier version is arranged by parts. */
export async function arrangement(worksheet: Worksheet): Promise<Recompose> {
  const older = await olderJobs()
  const names = olderJobsIn(worksheet, older)
  const jobs = await Promise.all(names.map(async (name) => [name, await template(name)] as const))
  const parts = new Map(jobs.map(([name, job]) => [name, job ? partsOf(job) : []]))
  return (library, now) => arranged(library, now, older, parts)
}
