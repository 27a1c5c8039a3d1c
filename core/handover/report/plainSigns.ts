/** Text in the code page of the standard PDF fonts (WinAnsi): signs it lacks are said in words, never dropped. */

/** Signs of the code page beyond Latin-1. */
const windowsSigns = '€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ';

/** What stands for signs outside the code page; each keeps the meaning. */
const words: Readonly<Record<string, string>> = {
  Δ: 'delta ',
  '∆': 'delta ',
  α: 'alpha',
  β: 'beta',
  γ: 'gamma',
  δ: 'delta',
  ε: 'epsilon',
  ζ: 'zeta',
  η: 'eta',
  θ: 'theta',
  κ: 'kappa',
  λ: 'lambda',
  μ: 'µ',
  ν: 'nu',
  ξ: 'xi',
  π: 'pi',
  ρ: 'rho',
  σ: 'sigma',
  τ: 'tau',
  φ: 'phi',
  ϕ: 'phi',
  χ: 'chi',
  ψ: 'psi',
  ω: 'omega',
  Γ: 'Gamma',
  Θ: 'Theta',
  Λ: 'Lambda',
  Σ: 'Sigma',
  Φ: 'Phi',
  Ψ: 'Psi',
  Ω: 'ohm',
  '≥': 'at least ',
  '≤': 'at most ',
  '≈': 'about ',
  '≠': 'not equal to ',
  '≪': 'far below ',
  '≫': 'far above ',
  '∞': 'infinite',
  '√': 'root of ',
  '∝': 'proportional to ',
  '∂': 'd',
  '∫': 'integral of ',
  '∑': 'sum of ',
  '∏': 'product of ',
  '∇': 'grad ',
  '−': '-',
  '‐': '-',
  '‑': '-',
  '‒': '–',
  '―': '—',
  '∙': '·',
  '⋅': '·',
  '∕': '/',
  '⌀': 'dia. ',
  '→': 'to',
  '←': 'from',
  '↑': 'up',
  '↓': 'down',
  '⇒': 'hence',
  '′': "'",
  '″': '"',
  '℃': '°C',
  '℉': '°F',
  ℓ: 'l',
  '⁰': '^0',
  '⁴': '^4',
  '⁵': '^5',
  '⁶': '^6',
  '⁷': '^7',
  '⁸': '^8',
  '⁹': '^9',
  '⁻': '^-',
  '⁺': '^+',
  ⁿ: '^n',
  '₀': '0',
  '₁': '1',
  '₂': '2',
  '₃': '3',
  '₄': '4',
  '₅': '5',
  '₆': '6',
  '₇': '7',
  '₈': '8',
  '₉': '9',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '✓': 'yes',
  '✗': 'no',
  '\u2009': ' ',
  '\u200a': ' ',
  '\u2002': ' ',
  '\u2003': ' ',
  '\u2007': ' ',
  '\u202f': '\u00a0',
};

/** Marks that show nothing by themselves: order of writing, joiners, byte order. */
const unseen = /\p{Cf}|[\ufe00-\ufe0f]/gu;

const inPage = (sign: string): boolean => /^[\u0020-\u007e\u00a0-\u00ff]$/.test(sign) || windowsSigns.includes(sign);

/** What stands for a sign that nothing else stands for. */
const stranger = '?';

/** A letter without its marks, where that is in the code page. */
function bare(sign: string): string | null {
  const plain = sign.normalize('NFKD').replace(/\p{M}/gu, '');
  return plain !== '' && Array.from(plain).every(inPage) ? plain : null;
}

/** A text for the standard fonts, and the signs of it that it could not keep or say. */
export interface PlainText {
  readonly text: string;
  /** each once: became `?`, or lost its marks */
  readonly lost: readonly string[];
}

/** A text in the code page of the standard fonts. Line ends and other controls become spaces. */
export function plainText(text: string): PlainText {
  const lost = new Set<string>();
  const signs = Array.from(text.normalize('NFC').replace(unseen, ''), (sign) => {
    if (inPage(sign)) return sign;
    if (/\p{Cc}/u.test(sign)) return ' ';
    const said = words[sign];
    if (said !== undefined) return said;
    lost.add(sign);
    return bare(sign) ?? stranger;
  });
  // a word that stands for a sign brings its own space
  return { text: signs.join('').replace(/ {2,}/g, ' '), lost: [...lost] };
}
