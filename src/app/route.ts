/** Where in the app one is: told by the part of the address after `#`, which no server sees. */
export type Route =
  | { readonly at: 'shelf' }
  /** A template or an empty sheet, not yet kept. */
  | { readonly at: 'new'; readonly template: string; readonly build: boolean }
  | { readonly at: 'sheet'; readonly id: string; readonly build: boolean }
  | { readonly at: 'link'; readonly fragment: string }

export function readRoute(hash: string): Route {
  const fragment = hash.replace(/^#/, '')
  if (fragment.startsWith('s=')) return { at: 'link', fragment }
  const [place, name, face] = fragment.split('/')
  const build = face === 'build'
  if (place === 'sheet' && name) return { at: 'sheet', id: decoded(name), build }
  if (place === 'new' && name) return { at: 'new', template: decoded(name), build }
  return { at: 'shelf' }
}

const decoded = (text: string): string => {
  try {
    return decodeURIComponent(text)
  } catch {
    return text
  }
}

export const toSheet = (id: string): string => `#sheet/${encodeURIComponent(id)}`
export const toNew = (template: string): string => `#new/${encodeURIComponent(template)}`

/** The address of this page with another fragment. */
export const addressOf = (fragment: string): string => `${location.href.replace(/#.*$/, '')}#${fragment}`
