import { spawnSync } from 'node:child_process'
import { install, ROOT } from './install.mjs'

install()
const { status } = spawnSync(
  process.execPath,
  ['--expose-gc', '--import', 'tsx', 'tests/bench/main.ts', ...process.argv.slice(2)],
  { cwd: ROOT, stdio: 'inherit' },
)
process.exitCode = status ?? 1
