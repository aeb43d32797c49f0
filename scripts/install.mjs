import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

export const ROOT = fileURLToPath(new URL('..', import.meta.url))

const packagesOf = (path) => {
  try {
    return JSON.parse(readFileSync(path, 'utf8')).packages
  } catch {
    return undefined
  }
}

/** Whether node_modules has what the lock file asks for, version by version. */
export function isInstalled(root = ROOT) {
  const locked = packagesOf(join(root, 'package-lock.json'))
  const found = packagesOf(join(root, 'node_modules/.package-lock.json'))
  if (!locked || !found) return false
  return Object.entries(locked).every(
    // Optional packages are for other kinds of machine; npm leaves those out.
    ([path, { version, optional }]) =>
      path === '' || (optional && !found[path]) || (found[path]?.version === version && existsSync(join(root, path))),
  )
}

/** Installs what package-lock.json asks for, if it is not there. Says nothing and takes no time when it is. */
export function install(root = ROOT) {
  if (isInstalled(root)) return
  process.stderr.write('Installing packages; this is needed once…\n')
  if (npm(root, 'ci') !== 0 && npm(root, 'install') !== 0) {
    process.stderr.write('The packages could not be installed; the lines above say why.\n')
    process.exit(1)
  }
}

/** Installs packages of Debian that a browser comes in, where that may be done; without the right to, it does nothing. */
export function installFromDebian(what, packages) {
  if (process.getuid?.() !== 0 || spawnSync('apt-get', ['--version']).status !== 0) return
  console.log(`Installing ${what}; this is needed once…`)
  const quiet = { stdio: ['ignore', 'ignore', 'inherit'], env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } }
  spawnSync('apt-get', ['-qq', 'update'], quiet)
  spawnSync('apt-get', ['-qq', 'install', '-y', '--no-install-recommends', ...packages], quiet)
}

function npm(root, command) {
  const args = [command, '--include=dev', '--no-audit', '--no-fund', '--no-progress']
  // npm's own path, when npm started us, spares the differences between shells.
  const path = process.env.npm_execpath
  const [file, all, shell] = path?.endsWith('.js')
    ? [process.execPath, [path, ...args], false]
    : ['npm', args, process.platform === 'win32']
  // npm's standard output goes to our standard error: what the terminal prints stays clean.
  return spawnSync(file, all, { cwd: root, stdio: ['ignore', 2, 2], shell }).status ?? 1
}
