"use strict";
(function () {
  /* Where a hand left a page is kept as long as the window is open, so that a way back leads there. */
  var here = location.pathname + location.search;

  function mark(e) {
    return e.id || [e.tagName, e.getAttribute("href"), e.name, e.getAttribute("aria-label") || e.textContent.trim()].join("|");
  }

  document.addEventListener("click", function (event) {
    var e = event.target.closest("main a, main button");
    if (e) {
      sessionStorage.setItem("left " + location.pathname + location.search, mark(e));
      if (e.hasAttribute("data-return")) {
        sessionStorage.setItem("back", e.getAttribute("href"));
      }
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
