import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { isInstalled } from '../../scripts/install.mjs'

let root = ''
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'evenfield-install-'))
})
afterEach(() => {
  rmSync(root, { recursive: true })
})

type Packages = Readonly<Record<string, { readonly version: string; readonly optional?: boolean }>>

const ask = (packages: Packages): void =>
  writeFileSync(
    join(root, 'package-lock.json'),
    JSON.stringify({ packages: { '': { version: '1.0.0' }, ...packages } }),
  )

function have(packages: Packages): void {
  for (const path of Object.keys(packages)) mkdirSync(join(root, path), { recursive: true })
  mkdirSync(join(root, 'node_modules'), { recursive: true })
  writeFileSync(join(root, 'node_modules/.package-lock.json'), JSON.stringify({ packages }))
}

test('without node_modules, nothing is installed', () => {
  ask({ 'node_modules/a': { version: '1.0.0' } })
  expect(isInstalled(root)).toBe(false)
})

test('what the lock file asks for, in its version, is installed', () => {
  ask({ 'node_modules/a': { version: '1.0.0' } })
  have({ 'node_modules/a': { version: '1.0.0' } })
  expect(isInstalled(root)).toBe(true)
})

test('another version is not', () => {
  ask({ 'node_modules/a': { version: '1.0.1' } })
  have({ 'node_modules/a': { version: '1.0.0' } })
  expect(isInstalled(root)).toBe(false)
})

test('a package whose folder is gone is not', () => {
  ask({ 'node_modules/a': { version: '1.0.0' } })
  have({ 'node_modules/a': { version: '1.0.0' } })
  rmSync(join(root, 'node_modules/a'), { recursive: true })
  expect(isInstalled(root)).toBe(false)
})

test('an optional package for another kind of machine is not missed', () => {
  ask({ 'node_modules/a': { version: '1.0.0' }, 'node_modules/a-elsewhere': { version: '1.0.0', optional: true } })
  have({ 'node_modules/a': { version: '1.0.0' } })
  expect(isInstalled(root)).toBe(true)
})
