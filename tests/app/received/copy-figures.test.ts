import { expect, test, vi } from 'vitest'
import { figuresOf } from '../../../src/app/received/copy-figures.ts'
import { LIBRARY } from '../../../src/functions/index.ts'
import { asMine } from '../../../src/worksheet/analysis/provenance.ts'
import { readTemplate } from '../../templates/open.ts'

// The page loads the functions that a sheet calls by what the build knows of them.
vi.mock('../../../src/app/common/library.ts', () => ({ libraryFor: () => Promise.resolve(LIBRARY) }))

test('a received check says that it rests on the example’s figures while it does', async () => {
  const said = async (worksheet = readTemplate('load-and-stand')): Promise<string[]> => {
    const { figures } = await figuresOf(worksheet)
    return figures.flatMap(({ label, text }) => (['Load', 'Stand'].includes(label) ? [text] : []))
  }
  expect(await said()).toEqual([
    expect.stringMatching(/^Pass \(with the example’s figures\): 10\.4 A/),
    expect.stringMatching(/^Pass \(with the example’s figures\): 0\.2 kg/),
  ])
  expect(await said(asMine(readTemplate('load-and-stand')))).toEqual([
    expect.stringMatching(/^Pass: 10\.4 A/),
    expect.stringMatching(/^Pass: 0\.2 kg/),
  ])
})
