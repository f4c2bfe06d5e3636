'use strict';
// What a page does beyond being read: the map moves, rows and marks find each other, tables are sorted. The page is whole without it.
(() => {
  document.documentElement.classList.add('script');
  const find = (selector, within = document) => [...within.querySelectorAll(selector)];
  const SVG = 'http://www.w3.org/2000/svg';
  const make = (name, attributes, parent) => {
    const element = document.createElementNS(SVG, name);
    Object.entries(attributes).forEach(([key, value]) => element.setAttribute(key, value));
    return parent.appendChild(element);
  };

  // ---- Tables

  const value = (row, column) => {
    const cell = row.cells[column];
    const text = (cell.dataset.sort ?? cell.textContent).trim();
    const number = Number(text.replace(/,/g, ''));
    return text === '' || text === 'unknown' ? null : Number.isNaN(number) ? text : number;
  };
  // Numbers before texts; what is not known stands last in either order.
  const compare = (a, b, sign) => {
    if (a === null || b === null) return (a === null) - (b === null);
    if (typeof a !== typeof b) return typeof a === 'number' ? -1 : 1;
    return sign * (typeof a === 'number' ? a - b : a < b ? -1 : a > b ? 1 : 0);
  };
  const sort = (table, head, column) => {
    const rising = head.getAttribute('aria-sort') !== 'ascending';
    find('th[aria-sort]', table.tHead).forEach(other => other.removeAttribute('aria-sort'));
    head.setAttribute('aria-sort', rising ? 'ascending' : 'descending');
    const rows = [...table.tBodies[0].rows].map(row => [value(row, column), row]);
    rows.sort((a, b) => compare(a[0], b[0], rising ? 1 : -1));
    table.tBodies[0].append(...rows.map(pair => pair[1]));
  };
  find('table.sortable').forEach(table => [...table.tHead.rows[0].cells].forEach((head, column) => {
    const button = document.createElement('button');
    button.type = 'button';
    button.className = 'sort';
    button.append(...head.childNodes);
    head.append(button);
    button.addEventListener('click', () => sort(table, head, column));
  }));

  // ---- Map

  const drawing = document.getElementById('map-drawing');
  if (!drawing) return;
  const view = document.getElementById('map-view');
  const full = { w: drawing.viewBox.baseVal.width, h: drawing.viewBox.baseVal.height };
  const box = { x: 0, y: 0, w: full.w, h: full.h };
  const CLOSEST = 64;
  let frameUnits = 1;
  const unitsPerPx = () => frameUnits * box.w / full.w;
  const place = element => element.getAttribute('transform').match(/-?[\d.]+/g).map(Number);

  // Texts with their widths as the browser has them, the most important first: upper layers before lower ones.
  const texts = find('.label', view).map(group => {
    const text = group.firstElementChild;
    const [x, y, angle = 0] = place(group);
    return { group, text, x, y, angle: angle * Math.PI / 180, size: parseFloat(getComputedStyle(text).fontSize), width: 0,
      along: group.classList.contains('along'), layer: group.closest('.layer'), spots: [] };
  });
  const layers = find('.layer', view);
  texts.forEach((label, i) => { label.order = -layers.indexOf(label.layer) * 1e6 + i; });
  texts.sort((a, b) => a.order - b.order);
  const marks = find('.mark', view).map(mark => {
    const [x, y] = place(mark);
    return { mark, x, y, layer: mark.closest('.layer') };
  });
  const measure = () => texts.forEach(label => {
    label.group.classList.remove('off');
    label.width = label.text.getComputedTextLength();
    const x = Number(label.text.getAttribute('x'));
    const y = Number(label.text.getAttribute('y'));
    const beside = Math.abs(x) > 0 && label.text.getAttribute('text-anchor') === 'start';
    label.spots = [[x, y, label.text.getAttribute('text-anchor')]];
    if (beside) label.spots.push([-x, y, 'end'], [0, y - x - 4, 'middle'], [0, y + x + 4, 'middle']);
  });
  const cover = (label, [x, y, anchor], unit) => {
    const left = x - (anchor === 'start' ? 0 : anchor === 'end' ? label.width : label.width / 2);
    const cos = Math.cos(label.angle), sin = Math.sin(label.angle);
    const xs = [], ys = [];
    [left, left + label.width].forEach(dx => [y - 0.85 * label.size, y + 0.25 * label.size].forEach(dy => {
      xs.push(label.x + unit * (dx * cos - dy * sin));
      ys.push(label.y + unit * (dx * sin + dy * cos));
    }));
    return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
  };
  const meets = (a, b, gap) => a[0] - gap < b[2] && b[0] - gap < a[2] && a[1] - gap < b[3] && b[1] - gap < a[3];
  const inSight = c => c[0] >= box.x && c[1] >= box.y && c[2] <= box.x + box.w && c[3] <= box.y + box.h;
  const placeTexts = () => {
    const unit = unitsPerPx();
    const taken = [];
    const seen = marks.filter(m => !m.layer.classList.contains('off') && m.x >= box.x && m.x <= box.x + box.w && m.y >= box.y && m.y <= box.y + box.h);
    const reach = 5 * unit;
    texts.forEach(label => {
      const spot = label.layer.classList.contains('off') ? undefined : label.spots.find(candidate => {
        const c = cover(label, candidate, unit);
        return inSight(c) && !taken.some(other => meets(c, other.c, other.along && label.along ? 55 * unit : 0))
          && !seen.some(m => (m.x !== label.x || m.y !== label.y) && meets(c, [m.x - reach, m.y - reach, m.x + reach, m.y + reach], 0));
      });
      label.group.classList.toggle('off', !spot);
      if (spot) {
        taken.push({ c: cover(label, spot, unit), along: label.along });
        label.text.setAttribute('x', spot[0]);
        label.text.setAttribute('y', spot[1]);
        label.text.setAttribute('text-anchor', spot[2]);
      }
    });
  };

  // The densest meridians and parallels that leave room, and their figures where they meet the frame.
  const figures = document.getElementById('map-figures');
  const steps = find('#layer-graticule > .step');
  const CORNER = 24;
  const crossings = step => find('polyline', step.firstElementChild).flatMap(line => {
    const left = line.dataset.side === 'left';
    const points = line.getAttribute('points').split(' ').map(pair => pair.split(',').map(Number));
    const [across, along] = left ? [0, 1] : [1, 0];
    const edge = left ? box.x : box.y + box.h;
    for (let i = 1; i < points.length; i++) {
      const [a, b] = [points[i - 1], points[i]];
      const share = (edge - a[across]) / (b[across] - a[across]);
      if (share >= 0 && share <= 1) {
        const at = a[along] + share * (b[along] - a[along]);
        const scaled = left ? (at - box.y) / box.h * full.h : (at - box.x) / box.w * full.w;
        const corner = CORNER * frameUnits;
        return scaled > corner && scaled < (left ? full.h : full.w) - corner ? [{ left, scaled, label: line.dataset.label }] : [];
      }
    }
    return [];
  });
  const placeGraticule = () => {
    const most = px => Math.max(2, Math.min(9, px / frameUnits / 95));
    let shown = steps[0];
    let found = shown ? crossings(shown) : [];
    for (const step of steps.slice(1)) {
      const next = crossings(step);
      if (next.filter(f => !f.left).length > most(full.w) || next.filter(f => f.left).length > most(full.h)) break;
      [shown, found] = [step, next];
    }
    steps.forEach(step => step.classList.toggle('off', step !== shown));
    figures.replaceChildren();
    if (document.getElementById('layer-graticule').classList.contains('off')) return;
    const room = { true: -Infinity, false: -Infinity };
    found.sort((a, b) => a.scaled - b.scaled).forEach(({ left, scaled, label }) => {
      if (scaled - room[left] < 70 * frameUnits) return;
      room[left] = scaled;
      const group = make('g', { transform: left ? `translate(0 ${scaled}) rotate(-90)` : `translate(${scaled} ${full.h})` }, figures);
      make('text', { class: 'upright', y: left ? -6 : 15 }, group).textContent = label;
    });
  };

  const scale = document.getElementById('map-scale');
  const round = most => {
    const power = 10 ** Math.floor(Math.log10(most));
    return [5, 2, 1].find(step => step * power <= most * (1 + 1e-9)) * power;
  };
  const placeScale = () => {
    const perMetre = Number(scale.dataset.unitsPerMetre) * full.w / box.w;
    find('.bar-line', scale).forEach(bar => {
      const metres = Number(bar.dataset.metres);
      const count = round(0.22 * full.w / perMetre / metres);
      const length = (count * metres * perMetre).toFixed(2);
      bar.querySelector('path').setAttribute('d', `M0 0h${length}`);
      bar.querySelector('g').setAttribute('transform', `translate(${length} 0)`);
      bar.querySelector('text').textContent = `${Number(count.toPrecision(1))} ${bar.dataset.unit}`;
    });
  };

  const holder = drawing.parentElement;
  let waiting = false;
  const draw = () => {
    waiting = false;
    holder.style.setProperty('--f', frameUnits);
    holder.style.setProperty('--k', unitsPerPx());
    view.setAttribute('viewBox', `${box.x} ${box.y} ${box.w} ${box.h}`);
    drawing.style.touchAction = box.w < full.w ? 'none' : 'pan-y';
    placeTexts();
    placeGraticule();
    placeScale();
  };
  const redraw = () => {
    if (!waiting) {
      waiting = true;
      requestAnimationFrame(draw);
    }
  };
  const look = (x, y, w) => {
    box.w = Math.min(full.w, Math.max(full.w / CLOSEST, w));
    box.h = box.w * full.h / full.w;
    box.x = Math.min(full.w - box.w, Math.max(0, x));
    box.y = Math.min(full.h - box.h, Math.max(0, y));
    redraw();
  };
  const zoom = (factor, x = box.x + box.w / 2, y = box.y + box.h / 2) => {
    const w = Math.min(full.w, Math.max(full.w / CLOSEST, box.w / factor));
    look(x - (x - box.x) * w / box.w, y - (y - box.y) * w / box.w, w);
  };
  const onGround = event => {
    const edge = drawing.getBoundingClientRect();
    return [box.x + (event.clientX - edge.left) / edge.width * box.w, box.y + (event.clientY - edge.top) / edge.height * box.h];
  };

  // ---- Rows and marks

  const targets = new Map();
  // A mark before the circle about it.
  [...find('a.mark', view), ...find('[data-feature]', view)].forEach(element => {
    if (!targets.has(element.dataset.feature)) targets.set(element.dataset.feature, element);
  });
  const rows = find('tr[data-feature]').filter(row => targets.has(row.dataset.feature));
  const links = find('a.mark', view);
  const picked = document.getElementById('map-picked');
  const middle = element => {
    if (element.classList.contains('mark')) return place(element);
    const b = element.getBBox();
    return [b.x + b.width / 2, b.y + b.height / 2];
  };
  const pick = id => {
    const target = targets.get(id);
    find('.picked').forEach(element => element.classList.remove('picked'));
    rows.forEach(row => row.removeAttribute('aria-current'));
    find('[data-feature]').filter(element => element.dataset.feature === id).forEach(element => {
      element.classList.add('picked');
      if (element.tagName === 'TR') element.setAttribute('aria-current', 'true');
    });
    links.forEach(link => link.setAttribute('tabindex', link === target ? 0 : -1));
    const [x, y] = middle(target);
    picked.replaceChildren();
    const ring = make('g', { transform: `translate(${x} ${y})` }, picked);
    make('circle', { r: 11 }, ring);
    return [x, y];
  };
  const centre = id => {
    const [x, y] = pick(id);
    const w = Math.min(box.w, full.w / 8);
    look(x - w / 2, y - w * full.h / full.w / 2, w);
  };
  const showRow = id => {
    const row = rows.find(candidate => candidate.dataset.feature === id);
    (row ?? document.getElementById(id))?.scrollIntoView({ block: row ? 'center' : 'start' });
    row?.focus({ preventScroll: true });
  };
  rows.forEach(row => {
    row.tabIndex = 0;
    const go = () => {
      centre(row.dataset.feature);
      const edge = drawing.getBoundingClientRect();
      if (edge.bottom < 80 || edge.top > innerHeight - 80) drawing.scrollIntoView({ block: 'nearest' });
    };
    row.addEventListener('click', event => { if (!event.target.closest('a, button, input, select')) go(); });
    row.addEventListener('keydown', event => { if (event.key === 'Enter' && event.target === row) go(); });
  });
  links.forEach((link, i) => link.setAttribute('tabindex', i === 0 ? 0 : -1));

  // ---- Pointers, wheel, keys

  const pointers = new Map();
  let moved = 0;
  drawing.addEventListener('pointerdown', event => {
    if (event.button > 0) return;
    if (pointers.size === 0) moved = 0;
    pointers.set(event.pointerId, [event.clientX, event.clientY]);
  });
  addEventListener('pointermove', event => {
    const last = pointers.get(event.pointerId);
    if (!last) return;
    const edge = drawing.getBoundingClientRect();
    const [dx, dy] = [event.clientX - last[0], event.clientY - last[1]];
    const others = [...pointers].filter(([id]) => id !== event.pointerId).map(([, at]) => at);
    moved += Math.abs(dx) + Math.abs(dy);
    pointers.set(event.pointerId, [event.clientX, event.clientY]);
    if (others.length === 1) {
      const [other] = others;
      const before = Math.hypot(last[0] - other[0], last[1] - other[1]);
      const after = Math.hypot(event.clientX - other[0], event.clientY - other[1]);
      if (before > 0 && after > 0) zoom(after / before, ...onGround({ clientX: other[0], clientY: other[1] }));
    } else if (others.length === 0 && moved > 4) {
      look(box.x - dx / edge.width * box.w, box.y - dy / edge.height * box.h, box.w);
    }
  });
  ['pointerup', 'pointercancel'].forEach(kind => addEventListener(kind, event => pointers.delete(event.pointerId)));
  drawing.addEventListener('dragstart', event => event.preventDefault());
  drawing.addEventListener('wheel', event => {
    const closer = event.deltaY < 0;
    // At its widest the map lets the page scroll on.
    if (!closer && box.w >= full.w) return;
    event.preventDefault();
    const pixels = event.deltaMode === 1 ? 16 * event.deltaY : event.deltaY;
    zoom(Math.exp(-Math.max(-200, Math.min(200, pixels)) / 400), ...onGround(event));
  }, { passive: false });
  view.addEventListener('click', event => {
    const hit = event.target.closest('[data-feature]');
    if (!hit) return;
    event.preventDefault();
    if (moved > 4 && event.detail > 0) return;
    pick(hit.dataset.feature);
    showRow(hit.dataset.feature);
  });
  const step = (dx, dy) => look(box.x + dx * box.w / 8, box.y + dy * box.h / 8, box.w);
  const next = by => {
    if (links.length === 0) return;
    const now = links.indexOf(document.activeElement);
    const link = links[(Math.max(now, by > 0 ? -1 : 0) + by + links.length) % links.length];
    centre(link.dataset.feature);
    link.focus({ preventScroll: true });
  };
  const keys = {
    ArrowLeft: () => step(-1, 0), ArrowRight: () => step(1, 0), ArrowUp: () => step(0, -1), ArrowDown: () => step(0, 1),
    '+': () => zoom(1.5), '=': () => zoom(1.5), '-': () => zoom(1 / 1.5), 0: () => look(0, 0, full.w),
    PageDown: () => next(1), PageUp: () => next(-1),
  };
  drawing.setAttribute('tabindex', '0');
  drawing.addEventListener('keydown', event => {
    const act = event.ctrlKey || event.metaKey || event.altKey ? undefined : keys[event.key];
    if (act) {
      event.preventDefault();
      act();
    }
  });
  const buttons = { in: () => zoom(1.5), out: () => zoom(1 / 1.5), all: () => look(0, 0, full.w) };
  find('.map-buttons').forEach(group => { group.hidden = false; });
  find('[data-zoom]').forEach(button => button.addEventListener('click', buttons[button.dataset.zoom]));

  // ---- Legend

  find('input[data-layer]').forEach(input => {
    const layer = document.getElementById(input.dataset.layer);
    const show = () => {
      layer?.classList.toggle('off', !input.checked);
      redraw();
    };
    input.addEventListener('change', show);
    // A browser may have kept the switches of an earlier visit.
    show();
  });
  const reason = document.getElementById('map-reason');
  const showReason = () => find('#layer-reasons image').forEach(image => image.classList.toggle('off',
    image.dataset.reason !== 'all' && image.dataset.reason !== reason.value));
  reason?.addEventListener('change', showReason);
  if (reason) showReason();

  const fit = () => {
    frameUnits = full.w / Math.max(1, drawing.getBoundingClientRect().width);
    redraw();
  };
  measure();
  fit();
  draw();
  new ResizeObserver(fit).observe(drawing);
  // Paper has its own width, which the page states.
  addEventListener('beforeprint', () => {
    frameUnits = Number(getComputedStyle(holder).getPropertyValue('--paper'));
    draw();
  });
  addEventListener('afterprint', fit);
})();
