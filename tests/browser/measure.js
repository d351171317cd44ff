// Evaluated by the driver in a page: what no page may have. Gives a list of sentences, empty when all is well.
const limit = arguments[0];
const faults = [];
const root = document.documentElement;

const told = (element) => {
  const text = (element.innerText || element.value || element.getAttribute("aria-label") || "").trim().replace(/\s+/g, " ").slice(0, 40);
  const name = element.getAttribute("name");
  return `<${element.tagName.toLowerCase()}${name ? ` name=${name}` : ""}${element.className.baseVal ?? element.className ? ` class=${element.className.baseVal ?? element.className}` : ""}> “${text}”`;
};

// Sideways scroll, and who causes it.
if (root.scrollWidth > root.clientWidth) {
  const wide = [...document.querySelectorAll("body *")].filter((e) => {
    const box = e.getBoundingClientRect();
    if (box.right <= root.clientWidth + 1 || box.width === 0) return false;
    // What scrolls inside its own box does not widen the page.
    for (let up = e.parentElement; up && up !== document.body; up = up.parentElement) {
      if (getComputedStyle(up).overflowX !== "visible") return false;
    }
    return true;
  });
  faults.push(`scrolls sideways: ${root.scrollWidth} px wide in ${root.clientWidth}; ${wide.slice(-2).map(told).join(", ")}`);
}

// Targets for a thumb.
if (limit > 0) {
  const shown = (e) => {
    const box = e.getBoundingClientRect();
    if (box.width < 2 || box.height < 2 || box.bottom + scrollY < 0 || box.right < 0) return false;
    return e.checkVisibility({ visibilityProperty: true, opacityProperty: true });
  };
  for (const e of document.querySelectorAll("a[href], button, input:not([type=hidden]), select, textarea, summary")) {
    // The whole label is the target of a tick or a choice.
    const target = /^(radio|checkbox)$/.test(e.type) && e.closest("label") ? e.closest("label") : e;
    if (!shown(target)) continue;
    // A link inside a sentence is as high as its line.
    if (e.tagName === "A" && getComputedStyle(e).display === "inline") {
      const around = e.parentElement.innerText.trim();
      if (around !== e.innerText.trim()) continue;
    }
    const box = target.getBoundingClientRect();
    if (box.height < limit - 0.5 || box.width < limit - 0.5) {
      faults.push(`target of ${box.width.toFixed(0)} × ${box.height.toFixed(0)} px: ${told(e)}`);
    }
  }
}

// What a phone needs to be told, and what must not be there.
if (!/width=device-width/.test(document.querySelector("meta[name=viewport]")?.content ?? "")) faults.push("the page does not take the phone's width");
if (document.querySelectorAll("script").length) faults.push("the page has a script");
if (document.querySelectorAll("h1").length !== 1) faults.push(`the page has ${document.querySelectorAll("h1").length} headings of the first rank`);
if (!document.title.trim()) faults.push("the page has no title");
for (const e of document.querySelectorAll("[id]")) {
  if (document.querySelectorAll(`[id="${CSS.escape(e.id)}"]`).length > 1) faults.push(`two elements are called ${e.id}`);
}
for (const e of document.querySelectorAll("[src], link[href]")) {
  const address = e.src || e.href;
  if (!address.startsWith(location.origin + "/") && !address.startsWith("data:")) faults.push(`the page asks another server: ${address}`);
}
return [...new Set(faults)];
