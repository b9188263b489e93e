"use strict";
(function () {
  /* Where a hand left a page is kept as long as the window is open, so that a way back leads there. */
  var here = location.pathname + location.search;

  function mark(e) {
    return e.id || [e.tagName, e.getAttribute("href"), e.name, e.getAttribute("aria-label") || e.textContent.trim()].join("|");
  }

  document.addEventListener("click", function (event) {
    var e = event.target.closest("main a, main button");
    sessionStorage.setItem("within", e ? "yes" : "");
    if (e) {
      sessionStorage.setItem("left " + location.pathname + location.search, mark(e));
      if (e.hasAttribute("data-return")) {
        sessionStorage.setItem("back", e.getAttribute("href"));
      }
    }
  });

  /* A drawer may be long: from anywhere in it the escape key goes the first way back, unless something is typed or being chosen. */
  document.addEventListener("keydown", function (event) {
    var way = document.querySelector("main a[data-return]");
    var busy = event.target.matches("select") || event.target.matches("input, textarea") && event.target.value || event.ctrlKey || event.altKey || event.metaKey || event.shiftKey;
    if (event.key === "Escape" && way && !busy && !event.defaultPrevented) {
      way.click();
    }
  });

  if (sessionStorage.getItem("back") === here) {
    var left = sessionStorage.getItem("left " + here);
    var there = Array.from(document.querySelectorAll("main a, main button")).find(function (e) { return mark(e) === left; });
    if (there && document.activeElement === document.body) {
      for (var fold = there.closest("details"); fold; fold = fold.parentElement.closest("details")) {
        fold.open = true;
      }
      there.focus({ preventScroll: true });
      there.scrollIntoView({ block: "center", behavior: "instant" });
    }
  }
  sessionStorage.removeItem("back");

  /* Who goes on from within a page, or may go back, begins at what is on the next one, not at the ways to all others before it. */
  var within = sessionStorage.getItem("within") || document.querySelector("main a[data-return]");
  sessionStorage.removeItem("within");
  if (within && document.activeElement === document.body && !document.querySelector("[autofocus]")) {
    document.getElementById("main").focus({ preventScroll: true });
  }

  /* A page that a form led to is loaded anew: what was done, or what is wrong, is put where it is heard once the page is there. */
  var HEARD_MS = 300;
  var sent = sessionStorage.getItem("sent");
  sessionStorage.removeItem("sent");
  if (sent) {
    var wrong = document.querySelector("main [role=alert]");
    var done = Array.from(document.querySelectorAll("[data-told]")).map(function (e) { return e.textContent.trim(); }).join(" ");
    setTimeout(function () {
      var heard = document.getElementById("told");
      if (!heard.textContent) {
        heard.textContent = wrong ? wrong.innerText.trim() : done && (sent === "yes" ? done : sent);
      }
    }, HEARD_MS);
  }
  document.addEventListener("submit", function (event) {
    if (!event.defaultPrevented && event.target.method === "post") {
      sessionStorage.setItem("sent", event.target.dataset.said || "yes");
    }
  });

  /* An arrow moves a slider by half a step to the next half; what it changes is asked for when the keys rest. */
  var BY_KEY = { ArrowRight: 0.5, ArrowUp: 0.5, ArrowLeft: -0.5, ArrowDown: -0.5, PageUp: 1, PageDown: -1 };
  var KEYS_REST_MS = 300;
  var keys = 0;
  document.addEventListener("keydown", function (event) {
    var slider = event.target;
    var by = BY_KEY[event.key];
    if (slider.type !== "range" || !by || event.ctrlKey || event.altKey || event.metaKey) {
      return;
    }
    event.preventDefault();
    var halves = 2 * slider.value + 2 * by;
    var now = (by > 0 ? Math.floor(halves + 1e-6) : Math.ceil(halves - 1e-6)) / 2;
    if (now === Number(slider.value)) {
      return;
    }
    slider.value = now;
    slider.dispatchEvent(new Event("input", { bubbles: true }));
    clearTimeout(keys);
    keys = setTimeout(function () {
      if (slider.isConnected) {
        slider.dispatchEvent(new Event("change", { bubbles: true }));
      }
    }, KEYS_REST_MS);
  });

  /* What was typed and asked back is typed over. */
  var typed = document.querySelector("input.big[autofocus]");
  if (typed && typed.value) {
    typed.focus();
    typed.select();
  }

  /* The enter key in a field that names another goes there first, as long as that is empty: it may stay so, but not by oversight. */
  document.addEventListener("keydown", function (event) {
    var then = event.key === "Enter" && event.target.dataset.then;
    var next = then && event.target.value.trim() && document.getElementById(then);
    if (next && !next.value.trim()) {
      event.preventDefault();
      next.focus();
    }
  });
})();
