import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { build, type Plugin, type Rolldown } from 'vite'

const WORKER = 'src/worker/worker.ts'
/** At the root of the site: a worker answers for the folder it is in. */
const WORKER_FILE = 'worker.js'

interface SiteFile {
  readonly url: string
  /** Null where the name itself changes with the content. */
  readonly revision: string | null
}

const hash = (content: string | Uint8Array): string => createHash('sha256').update(content).digest('hex').slice(0, 16)

const listed = (url: string, content: string | Uint8Array): SiteFile => ({
  url,
  revision: url.startsWith('assets/') ? null : hash(content),
})

/** The files that are copied as they are. */
const copied = (folder: string): SiteFile[] =>
  readdirSync(folder).map((name) => listed(name, readFileSync(join(folder, name))))

const built = (bundle: Rolldown.OutputBundle): SiteFile[] =>
  Object.values(bundle).map((file) => listed(file.fileName, file.type === 'chunk' ? file.code : file.source))

/** The worker as one classic script, its list of files put in. */
async function workerFor(root: string, files: readonly SiteFile[]): Promise<string> {
  const made = (await build({
    root,
    configFile: false,
    publicDir: false,
    logLevel: 'error',
    define: { SITE_FILES: JSON.stringify(files), 'process.env.NODE_ENV': '"production"' },
    build: {
      write: false,
      target: 'es2022',
      lib: { entry: join(root, WORKER), formats: ['iife'], name: 'worker', fileName: 'worker' },
    },
  })) as Rolldown.RolldownOutput[]
  const chunk = made[0]?.output[0]
  if (!chunk) throw new Error(`${WORKER} was not built.`)
  return chunk.code
}

/** Lists every file of the built site in a service worker, which caches them for use without a network. */
export function offline(): Plugin {
  let root: string
  let publicDir: string
  return {
    name: 'evenfield-offline',
    apply: 'build',
    configResolved(config) {
      root = config.root
      publicDir = config.publicDir
    },
    generateBundle: {
      // The page itself is among the files.
      order: 'post',
      async handler(_, bundle) {
        const files = [...built(bundle), ...copied(publicDir)].sort((a, b) => (a.url < b.url ? -1 : 1))
        this.emitFile({ type: 'asset', fileName: WORKER_FILE, source: await workerFor(root, files) })
      },
    },
  }
}
