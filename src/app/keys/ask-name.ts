import type { LitElement } from 'lit'
import type { BuildFace } from '../build/build-face.ts'

/** Asks for the name of a new sheet: what is typed replaces what it is called, and Enter goes on to its first cell. */
export async function askName(page: DocumentFragment | HTMLElement): Promise<void> {
  const head = page.querySelector<LitElement>('sheet-head')
  await head?.updateComplete
  const title = head?.renderRoot.querySelector<HTMLInputElement>('h1 input')
  title?.select()
  title?.addEventListener('keydown', ({ key }) => {
    if (key === 'Enter') void typeCell(page)
  })
}

async function typeCell(page: DocumentFragment | HTMLElement): Promise<void> {
  await customElements.whenDefined('build-face')
  const face = page.querySelector<BuildFace>('build-face')
  // Only then has it the sheet.
  await face?.updateComplete
  await face?.typeBelow(undefined)
}
