/** Parts of a selector that no element of a still page can be asked for. */
const STATES = /::?(before|after|marker|placeholder|hover|focus|focus-visible|focus-within|active|-webkit-[a-z-]+)\b/g;

/** Around the sheet on the screen. */
const FRAME = '@media screen{html{background:#f1efe8}body{max-width:210mm;margin:0 auto}}@media print{body{margin:0}}';

/**
 * The report as one page that needs nothing else: its styles inlined, its pictures in it, no script, and forbidden to load
 * any. Names in it stay what they are in the page, text.
 */
export function standaloneHtml(report: HTMLElement, title: string): string {
  const copy = report.cloneNode(true) as HTMLElement;
  for (const element of copy.querySelectorAll('[tabindex], [role="slider"]'))
    for (const name of [
      'tabindex',
      'role',
      ...element.getAttributeNames().filter((other) => other.startsWith('aria-value')),
    ])
      element.removeAttribute(name);
  const heading = document.createElement('title');
  heading.textContent = title;
  return [
    '<!doctype html>',
    '<html lang="en"><head><meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:">`,
    heading.outerHTML,
    `<style>${FRAME}${stylesOf(report)}</style>`,
    '</head><body>',
    copy.outerHTML,
    '</body></html>',
  ].join('\n');
}

/** Every rule of the page that says something about an element and what is in it. */
function stylesOf(root: Element): string {
  return [...document.styleSheets].flatMap((sheet) => rulesFor(root, sheet.cssRules)).join('\n');
}

function rulesFor(root: Element, rules: CSSRuleList): string[] {
  return [...rules].flatMap((rule): string[] => {
    if (rule instanceof CSSStyleRule) return applies(root, rule.selectorText) ? [rule.cssText] : [];
    if (rule instanceof CSSMediaRule) {
      const inside = rulesFor(root, rule.cssRules);
      return inside.length === 0 ? [] : [`@media ${rule.conditionText} {${inside.join('\n')}}`];
    }
    return rule instanceof CSSLayerBlockRule ? rulesFor(root, rule.cssRules) : [];
  });
}

function applies(root: Element, selector: string): boolean {
  const still = selector.replace(STATES, '');
  try {
    return root.matches(still) || root.querySelector(still) !== null;
  } catch {
    return false;
  }
}
