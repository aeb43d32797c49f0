import { RELEASED } from 'virtual:released-jobs'
import type { BaseSheet, FindBase } from '../../storage/exchange/sheet-on-bases.ts'
import type { Worksheet } from '../../worksheet/index.ts'
import { fetched, templateFile, templatesLike } from './prepared-template.ts'

/** More jobs than these are not fetched to make a link shorter. */
const MOST_JOBS = 3

/** The worksheet of a job as it was released with a digest; undefined where no release has it. */
export const findBase: FindBase = async (job, digest) => {
  const digests = Object.hasOwn(RELEASED, job) ? RELEASED[job] : undefined
  const address = digests && Object.hasOwn(digests, digest) ? digests[digest] : undefined
  if (address === undefined) return undefined
  return address === '' ? (await templateFile(job))?.worksheet : fetched<Worksheet>(address)
}

/** The released jobs a worksheet may have been made from; none where they cannot be fetched. */
export async function basesFor(worksheet: Worksheet): Promise<readonly BaseSheet[]> {
  try {
    const jobs = await templatesLike(worksheet, MOST_JOBS)
    const found = jobs.flatMap((job) =>
      Object.keys(RELEASED[job] ?? {}).map(async (digest): Promise<readonly BaseSheet[]> => {
        const base = await findBase(job, digest)
        return base ? [{ job, digest, worksheet: base }] : []
      }),
    )
    return (await Promise.all(found)).flat()
  } catch {
    return []
  }
}
