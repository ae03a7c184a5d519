// Light or dark, the search, and the settings of the mathematics.
(function () {
  const root = document.documentElement;
  const kept = (function () { try { return localStorage.getItem("scheme"); } catch (e) { return null; } })();
  const system = matchMedia("(prefers-color-scheme: dark)");
  function show(scheme) { root.dataset.scheme = scheme; }
  show(kept || (system.matches ? "dark" : "light"));
  system.addEventListener("change", e => show(e.matches ? "dark" : "light"));

  window.MathJax = {
    options: { enableMenu: false, ignoreHtmlClass: "inner|index", processHtmlClass: "math" },
    tex: { inlineMath: [["\\(", "\\)"]], displayMath: [["\\[", "\\]"]] },
    svg: { fontCache: "local" },
    startup: {
      pageReady: () => MathJax.startup.defaultPageReady().then(() => { root.dataset.mathematics = "done"; })
    }
  };

  let index = null;
  function load(script) {
    return new Promise((done, failed) => {
      const tag = document.createElement("script");
      tag.src = document.body.dataset.up + "assets/" + script;
      tag.onload = done;
      tag.onerror = failed;
      document.head.append(tag);
    });
  }
  async function prepare() {
    await Promise.all([load("lunr.min.js"), load("index.js")]);
    return lunr(function () {
      this.ref("i");
      this.field("title", { boost: 4 });
      this.field("heading", { boost: 8 });
      this.field("text");
      window.waterjetSections.forEach((row, i) => this.add({ i, title: row[1], heading: row[2], text: row[3] }));
    });
  }
  function excerpt(text, word) {
    const at = Math.max(0, text.toLowerCase().indexOf(word.toLowerCase()) - 50);
    return (at > 0 ? "…" : "") + text.slice(at, at + 150) + (text.length > at + 150 ? "…" : "");
  }
  async function search(text, found) {
    const words = text.toLowerCase().match(/[\p{L}\p{N}.-]+/gu);
    found.hidden = !words;
    if (!words) { found.replaceChildren(); return; }
    index = index || prepare();
    const lookup = await index;
    // the index holds stems; a wildcard lets the word be unfinished
    const hits = lookup.query(q => words.forEach(word => {
      const stem = lunr.stemmer(new lunr.Token(word, {})).toString();
      q.term(stem, { presence: lunr.Query.presence.REQUIRED, wildcard: lunr.Query.wildcard.TRAILING, usePipeline: false });
      q.term(stem, { boost: 10, usePipeline: false });
    })).slice(0, 12);
    const list = document.createElement("ul");
    for (const hit of hits) {
      const row = window.waterjetSections[hit.ref];
      const item = document.createElement("li");
      const link = document.createElement("a");
      link.href = document.body.dataset.up + row[0];
      link.textContent = row[1] === row[2] ? row[1] : row[1] + ": " + row[2];
      const line = document.createElement("p");
      line.textContent = excerpt(row[3], words[0]);
      item.append(link, line);
      list.append(item);
    }
    const count = document.createElement("p");
    count.className = "count";
    count.textContent = hits.length === 0 ? "Nothing found for " + words.join(" ") : "";
    found.replaceChildren(count, list);
  }

  addEventListener("DOMContentLoaded", () => {
    document.getElementById("scheme").addEventListener("click", () => {
      const scheme = root.dataset.scheme === "dark" ? "light" : "dark";
      show(scheme);
      try { localStorage.setItem("scheme", scheme); } catch (e) { /* a page from disk may have no store */ }
    });
    const field = document.getElementById("search");
    const found = document.getElementById("found");
    field.addEventListener("input", () => search(field.value, found));
    field.addEventListener("keydown", e => {
      if (e.key === "Escape") { field.value = ""; search("", found); }
      if (e.key === "Enter" && found.querySelector("a")) { found.querySelector("a").click(); }
      if (e.key === "ArrowDown" && found.querySelector("a")) { found.querySelector("a").focus(); e.preventDefault(); }
    });
    found.addEventListener("click", e => { if (e.target.closest("a")) { found.hidden = true; } });
    found.addEventListener("keydown", e => {
      const links = [...found.querySelectorAll("a")];
      const place = links.indexOf(document.activeElement);
      if (e.key === "ArrowDown" && place + 1 < links.length) { links[place + 1].focus(); e.preventDefault(); }
      if (e.key === "ArrowUp") { (place > 0 ? links[place - 1] : field).focus(); e.preventDefault(); }
      if (e.key === "Escape") { found.hidden = true; field.focus(); }
    });
    addEventListener("keydown", e => {
      if (e.key === "/" && !/^(INPUT|TEXTAREA|SELECT)$/.test(document.activeElement.tagName)) { field.focus(); e.preventDefault(); }
    });
  });
})();
