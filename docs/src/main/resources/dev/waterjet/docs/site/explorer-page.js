// Fields, sliders and drawings of the explorer; every number comes from the compiled library.
(function () {
  const library = window.main || window;
  const sliders = [
    ["pressure", "Pressure", 100, 600, 5, "MPa", 400], ["orifice", "Orifice", 0.1, 0.5, 0.01, "mm", 0.3],
    ["tube", "Focusing tube", 0.4, 1.6, 0.01, "mm", 0.9], ["flow", "Abrasive flow rate", 50, 1200, 10, "g/min", 400],
    ["thickness", "Thickness", 1, 100, 0.5, "mm", 10]];
  const qualities = [["VERY_COARSE", "very coarse"], ["COARSE", "coarse"], ["MEDIUM", "medium"], ["FINE", "fine"], ["VERY_FINE", "very fine"]];
  const host = document.getElementById("workbench");
  const materials = JSON.parse(library.materials());
  const option = ([value, label]) => `<option value="${value}">${label}</option>`;

  host.innerHTML = `<form class="fields">` + sliders.map(([id, label, min, max, step, unit, start]) =>
      `<div><label for="x-${id}">${label}</label><input id="x-${id}" class="quantity" value="${start} ${unit}" spellcheck="false">
       <input type="range" aria-label="${label} in ${unit}" data-for="x-${id}" data-unit="${unit}" min="${min}" max="${max}" step="${step}" value="${start}"></div>`).join("") +
    `<div><label for="x-material">Material</label><select id="x-material">` + materials.ids.map((id, i) => option([id, materials.names[i]])).join("") +
    `</select></div><div><label for="x-quality">Cut quality</label><select id="x-quality">` + qualities.map(option).join("") + `</select></div></form>
    <p class="refusal" role="alert"></p><dl class="answers" aria-live="polite"></dl><p class="cautions"></p>
    <div class="views"><figure><svg id="v-curve" viewBox="0 0 460 300" role="img" aria-label="Feed rate over thickness"></svg><figcaption>Feed rate over thickness, 95 % interval</figcaption></figure>
    <figure><svg id="v-kerf" viewBox="0 0 300 300" role="img" aria-label="Cross-section of the kerf"></svg><figcaption></figcaption></figure>
    <figure><svg id="v-front" viewBox="0 0 300 300" role="img" aria-label="Cut front from the side"></svg><figcaption></figcaption></figure>
    <figure><svg id="v-corner" viewBox="0 0 300 300" role="img" aria-label="Bottom of the jet at a corner"></svg><figcaption></figcaption>
    <button type="button" id="x-play">Run round the corner</button></figure></div>
    <h2>Your test cuts</h2><p><label for="x-csv">Paste the CSV that <a href="calibration.html">calibration</a> describes; the lines below are invented.</label></p>
    <textarea id="x-csv" rows="8" spellcheck="false"></textarea><p><button type="button" id="x-fit">Fit</button></p><div id="x-fitted" aria-live="polite"></div>`;
  const field = id => document.getElementById("x-" + id);
  field("material").value = "titanium";
  field("quality").value = "MEDIUM";

  const figures = x => x === 0 ? "0" : Number(x.toPrecision(3)).toString();
  const rows = a => [
    ["Jet speed", figures(a.jet_speed) + " m/s"], ["Water", figures(a.water_flow * 6e4) + " L/min"], ["Hydraulic power", figures(a.power / 1e3) + " kW"],
    ["Reaction force", figures(a.reaction_force) + " N"], ["Loading ratio", figures(a.loading_ratio)], ["Particle speed", figures(a.particle_speed) + " m/s"],
    ["Feed rate", figures(a.feed * 6e4) + " mm/min"], ["95 % interval", figures(a.feed_lower * 6e4) + " to " + figures(a.feed_upper * 6e4) + " mm/min"],
    ["Kerf, entry and exit", figures(a.entry_width * 1e3) + " mm, " + figures(a.exit_width * 1e3) + " mm"],
    ["Taper per side", figures(a.taper * 180 / Math.PI) + "°"], ["Kerf shape", a.regime], ["Exit lag", figures(a.exit_lag * 1e3) + " mm"]];
  const caption = (id, text) => { document.getElementById(id).parentNode.querySelector("figcaption").textContent = text; };
  const path = points => "M" + points.map(p => p[0].toFixed(2) + " " + p[1].toFixed(2)).join("L");

  function curve(a) {
    const far = a.curve[a.curve.length - 1][0];
    const tops = a.upper.map(p => p[1] * 6e4), lows = a.lower.map(p => p[1] * 6e4);
    const top = Math.ceil(Math.log10(Math.max(...tops))), low = Math.floor(Math.log10(Math.min(...lows)));
    const x = h => 52 + 395 * h / far, y = u => 268 - 255 * (Math.log10(u) - low) / (top - low);
    let svg = "";
    for (let k = low; k <= top; k++) svg += `<path class="grid" d="M52 ${y(10 ** k)}H447"/><text x="46" y="${y(10 ** k) + 4}" text-anchor="end">${figures(10 ** k)}</text>`;
    for (let k = 0; k <= 4; k++) svg += `<text x="${x(far * k / 4)}" y="284" text-anchor="middle">${figures(far * k / 4 * 1e3)}</text>`;
    const up = a.upper.map(p => [x(p[0]), y(p[1] * 6e4)]), down = a.lower.map(p => [x(p[0]), y(p[1] * 6e4)]).reverse();
    svg += `<path class="band" d="${path(up.concat(down))}Z"/><path class="line" d="${path(a.curve.map(p => [x(p[0]), y(p[1] * 6e4)]))}"/>`;
    svg += `<circle class="mark" cx="${x(a.thickness)}" cy="${y(a.feed * 6e4)}" r="5"/><text x="249" y="298" text-anchor="middle">thickness [mm], feed rate [mm/min]</text>`;
    document.getElementById("v-curve").innerHTML = svg;
  }
  function kerf(a) {
    const widest = Math.max(...a.wall.map(p => p[1])), across = 100 / widest, down = 260 / a.thickness;
    const wall = sign => a.wall.map(p => [150 + sign * across * p[1], 20 + down * p[0]]);
    document.getElementById("v-kerf").innerHTML = `<path class="solid" d="M10 20L${path(wall(-1)).slice(1)}L10 280Z"/><path class="solid" d="M290 20L${path(wall(1)).slice(1)}L290 280Z"/>`;
    caption("v-kerf", "Cross-section, stretched sideways by " + figures(across / down));
  }
  function front(a) {
    const scale = Math.min(260 / a.thickness, 230 / Math.max(a.exit_lag, 1e-9));
    const line = a.front.map(p => [250 - scale * p[1], 20 + scale * p[0]]);
    document.getElementById("v-front").innerHTML = `<path class="solid" d="${path(line)}L290 ${20 + scale * a.thickness}V20Z"/><path class="line" d="${path(line)}"/><path class="grid" d="M250 5V${20 + scale * a.thickness}"/>`;
    caption("v-front", "Cut front from the side, to scale; the head moves right");
  }
  // the bottom hangs one lag behind along the direction of motion; that direction turns at the corner
  function bottom(s, lag) {
    if (s <= 0) return [s - lag, 0];
    const turn = Math.min(1, s / (0.35 * lag + 1e-12)), angle = turn * Math.PI / 2, rest = Math.max(0, s - 0.35 * lag);
    return [-lag * Math.cos(angle), rest - lag * Math.sin(angle)];
  }
  let timer = 0;
  function corner(a, end) {
    const lag = a.exit_lag, reach = 2.2 * lag, scale = 110 / reach;
    const at = p => [170 + scale * p[0], 150 - scale * p[1]];
    const steps = [];
    for (let s = lag - reach; s <= end; s += reach / 60) steps.push(at(bottom(s, lag)));
    const head = end <= 0 ? at([end, 0]) : at([0, Math.max(0, end - 0.35 * lag)]);
    document.getElementById("v-corner").innerHTML = `<path class="path" d="M${170 - scale * reach} 150H170V${150 - scale * reach}"/>` +
      (steps.length ? `<path class="foot" d="${path(steps)}"/>` : "") + `<circle class="mark" cx="${head[0]}" cy="${head[1]}" r="5"/>`;
    caption("v-corner", "Corner at full feed rate: grey the head, orange the bottom; it leaves the line by " + figures(lag * 1e3) + " mm");
  }
  function play(a) {
    cancelAnimationFrame(timer);
    const reach = 2.2 * a.exit_lag, start = performance.now();
    const still = matchMedia("(prefers-reduced-motion: reduce)").matches;
    (function frame(now) {
      const share = still ? 1 : Math.min(1, (now - start) / 4000);
      corner(a, -reach + (2 * reach + 0.35 * a.exit_lag) * share);
      if (share < 1) timer = requestAnimationFrame(frame);
    })(start);
  }
  let answer = null;
  function update() {
    const a = JSON.parse(library.cut(field("pressure").value, field("orifice").value, field("tube").value, field("flow").value,
      field("thickness").value, field("material").value, field("quality").value));
    host.querySelector(".refusal").textContent = a.error || "";
    host.classList.toggle("stale", !!a.error);
    if (a.error) return;
    answer = a;
    host.querySelector(".answers").innerHTML = rows(a).map(([k, v]) => `<div><dt>${k}</dt><dd>${v}</dd></div>`).join("");
    host.querySelector(".cautions").textContent = a.cautions.length ? "Cautions: " + a.cautions.join("; ") : "";
    curve(a); kerf(a); front(a);
    cancelAnimationFrame(timer);
    corner(a, 2.55 * a.exit_lag);
  }
  host.addEventListener("input", e => {
    const slider = e.target;
    if (slider.dataset.for) document.getElementById(slider.dataset.for).value = slider.value + " " + slider.dataset.unit;
    update();
  });
  host.querySelector("form").addEventListener("submit", e => e.preventDefault());
  field("csv").value = ["label,test,thickness_mm,feed_mm_per_min,pressure_MPa,orifice_mm,tube_mm,abrasive_flow_g_per_min",
    "A1,separation,6,1585,400,0.30,0.90,400", "A2,separation,10,905,400,0.30,0.90,400", "A3,separation,10,838,400,0.30,0.90,400",
    "A4,separation,15,552,400,0.30,0.90,400", "A5,separation,20,375,400,0.30,0.90,400", "A6,separation,10,517,300,0.30,0.90,400", ""].join("\n");
  field("fit").addEventListener("click", () => {
    const a = JSON.parse(library.fit(field("csv").value));
    const line = text => { const p = document.createElement("p"); p.textContent = text; return p; };
    field("fitted").replaceChildren(...(a.error ? [line(a.error)] : [
      line(`Machinability number ${figures(a.machinability)}, 95 % interval ${figures(a.lower)} to ${figures(a.upper)}, from ${a.cuts} cuts by ${a.method}; scatter of a cut ${figures(100 * a.scatter)} %.`),
      line(`Next cut worth making: ${figures(a.next_pressure / 1e6)} MPa, try ${figures(a.next_feed * 6e4)} mm/min; it narrows the interval of one more cut by ${figures(100 * a.next_narrowing)} %.`),
      ...a.remarks.map(line)]));
  });
  field("play").addEventListener("click", () => { if (answer) play(answer); });
  update();
})();
