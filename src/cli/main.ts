import { isMainThread } from 'node:worker_threads'
import { runCommand } from './command.ts'

// A thread of `frames` is this program again, so that it is one file wherever it runs.
const { isFrameWorker, serveFrames } = isMainThread ? {} : await import('./frame-pool.ts')

if (isFrameWorker?.()) serveFrames?.()
else process.exitCode = await runCommand(process.argv.slice(2), import.meta.url)
