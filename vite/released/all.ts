import { currentJobs, releasedJobs } from '../../src/cli/released-jobs.ts'

const current = new Map(currentJobs().map(({ job, digest }) => [job, digest]))

/** Each job's released worksheets by digest; none where it is the worksheet the job starts with now. */
export const released = releasedJobs().map(({ job, digest, worksheet }) => ({
  job,
  digest,
  worksheet: current.get(job) === digest ? undefined : worksheet,
}))
