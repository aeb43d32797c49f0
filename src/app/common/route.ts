/** What of an open sheet is shown: it is filled in, set at the stand, built, or its functions are looked up. */
export type Face = 'fill' | 'stand' | 'build' | 'functions'

/** Where in the app one is: told by the part of the address after `#`, which no server sees. */
export type Route =
  | { readonly at: 'shelf' }
  /** The studio's equipment. */
  | { readonly at: 'kit' }
  /** A template or an empty sheet, not yet kept. */
  | { readonly at: 'new'; readonly template: string; readonly face: Face }
  | { readonly at: 'sheet'; readonly id: string; readonly face: Face }
  | { readonly at: 'link'; readonly fragment: string }
  /** A file on the app's own server. */
  | { readonly at: 'server'; readonly path: string }

export function readRoute(hash: string): Route {
  const fragment = hash.replace(/^#/, '')
  if (fragment.startsWith('s=')) return { at: 'link', fragment }
  if (fragment.startsWith('open=')) return { at: 'server', path: decoded(fragment.slice('open='.length)) }
  if (fragment === 'kit') return { at: 'kit' }
  const [place, name, last] = fragment.split('/')
  const face = last === 'stand' || last === 'build' || last === 'functions' ? last : 'fill'
  if (place === 'sheet' && name) return { at: 'sheet', id: decoded(name), face }
  if (place === 'new' && name) return { at: 'new', template: decoded(name), face }
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

/** The same sheet by another face. */
export const withFace = (hash: string, face: Face): string => {
  const here = hash.replace(/\/(stand|build|functions)$/, '')
  return face === 'fill' ? here : `${here}/${face}`
}
