// Evaluated by the driver in a page that is shown as for paper: what no sheet may have. Gives a list of sentences, empty when all is well.
const faults = [];
const root = document.documentElement;
const told = (e) => `<${e.tagName.toLowerCase()}> “${(e.innerText || e.value || "").trim().replace(/\s+/g, " ").slice(0, 40)}”`;
const shown = (e) => e.checkVisibility({ visibilityProperty: true, opacityProperty: true }) && e.getBoundingClientRect().width > 1;

if (root.scrollWidth > root.clientWidth) faults.push(`wider than the sheet: ${root.scrollWidth} px in ${root.clientWidth}`);
for (const e of document.querySelectorAll("button, input:not([type=hidden]), select, textarea, nav, summary")) {
  if (shown(e)) faults.push(`nobody can press it on paper: ${told(e)}`);
}

// Ink: dark words, no dark grounds (toner is dear, and dark paper takes no pencil).
const light = ([r, g, b]) => {
  const [x, y, z] = [r, g, b].map((c) => (c / 255 <= 0.04045 ? c / 255 / 12.92 : ((c / 255 + 0.055) / 1.055) ** 2.4));
  return 0.2126 * x + 0.7152 * y + 0.0722 * z;
};
const colour = (text) => (text.match(/[\d.]+/g) ?? []).map(Number);
let words = 0;
for (const e of document.querySelectorAll("body *")) {
  const own = [...e.childNodes].some((n) => n.nodeType === Node.TEXT_NODE && n.textContent.trim());
  if (!own || !shown(e) || e.closest("svg")) continue;
  words += 1;
  const style = getComputedStyle(e);
  const contrast = 1.05 / (light(colour(style.color).slice(0, 3)) + 0.05);
  if (contrast < 7) faults.push(`pale on paper (${contrast.toFixed(1)}): ${told(e)}`);
  if (parseFloat(style.fontSize) < 9) faults.push(`too small on paper (${style.fontSize}): ${told(e)}`);
  const [r, g, b, a = 1] = colour(style.backgroundColor);
  if (a > 0 && light([r, g, b]) < 0.5) faults.push(`a dark ground on paper: ${told(e)}`);
}
if (words === 0) faults.push("an empty sheet");
return [...new Set(faults)];
