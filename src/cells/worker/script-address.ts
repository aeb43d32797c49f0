interface ScriptPolicy {
  createScriptURL(address: string): string
}

interface TrustedTypes {
  createPolicy(name: string, rules: ScriptPolicy): ScriptPolicy
}

let policy: ScriptPolicy | undefined

/**
 * The address of a script of this site, as a worker takes it. Where the browser enforces trusted types, the page's one
 * policy has to vouch for it; it vouches for files beside the page and for nothing else.
 */
export function scriptAddress(address: string): string {
  const { trustedTypes } = globalThis as { trustedTypes?: TrustedTypes }
  if (!trustedTypes) return address
  policy ??= trustedTypes.createPolicy('evenfield', {
    createScriptURL: (text) => {
      if (new URL(text, document.baseURI).origin !== location.origin)
        throw new TypeError(`${text} is not of this site.`)
      return text
    },
  })
  return policy.createScriptURL(address)
}
