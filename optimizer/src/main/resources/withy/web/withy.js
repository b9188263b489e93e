"use strict";
(function () {
  var asked = 0;
  var shown = location.pathname + location.search;

  /* What an element is known by on the page that comes in its place. */
  function mark(e) {
    return e.id || [e.tagName, e.getAttribute("href"), e.name, e.getAttribute("aria-label") || e.textContent.trim()].join("|");
  }

  function same(e, within) {
    var like = mark(e);
    return Array.from(within.querySelectorAll(e.tagName)).find(function (other) { return mark(other) === like; });
  }

  function swap(html, url, quiet) {
    var page = new DOMParser().parseFromString(html, "text/html");
    var fresh = page.querySelector("main");
    var old = document.querySelector("main");
    if (!fresh || !old) {
      return false;
    }
    var focus = old.contains(document.activeElement) ? same(document.activeElement, fresh) : null;
    old.querySelectorAll("details").forEach(function (was) {
      var title = was.querySelector("summary");
      var now = was.id ? fresh.querySelector("details[id='" + was.id + "']") : title && same(title, fresh);
      if (now) {
        now.closest("details").open = was.open;
      }
    });
    var moved = Array.from(old.querySelectorAll("[tabindex]")).map(function (was) {
      return [was.scrollLeft, same(was, fresh)];
    });
    old.replaceWith(document.adoptNode(fresh));
    document.title = page.title;
    if (!quiet) {
      history.pushState(null, "", url);
      shown = location.pathname + location.search;
    }
    rest();
    moved.forEach(function (one) {
      if (one[1]) {
        one[1].scrollLeft = one[0];
      }
    });
    if (focus) {
      focus.focus({ preventScroll: true });
    }
    return true;
  }

  var held = false;
  document.addEventListener("pointerdown", function () { held = true; });
  document.addEventListener("pointerup", function () { held = false; });
  document.addEventListener("pointercancel", function () { held = false; });

  /* What is still being looked for comes in its place when it is found, unless the page has moved on or a slider is held. */
  function rest() {
    var note = document.querySelector("[data-rest]");
    if (!note) {
      return;
    }
    var query = new URLSearchParams(location.search);
    query.set("show", note.dataset.rest);
    fetch(location.pathname + "?" + query, { credentials: "same-origin" })
      .then(function (answer) { return answer.ok ? answer.text() : ""; })
      .then(function put(html) {
        if (!document.contains(note)) {
          return;
        }
        if (held) {
          setTimeout(function () { put(html); }, 200);
        } else if (!html || !swap(html, "", true)) {
          location.reload();
        }
      })
      .catch(function () {});
  }

  function count(form) {
    var place = document.getElementById("count");
    var turn = ++asked;
    place.setAttribute("aria-busy", "true");
    fetch(form.dataset.count, { method: "POST", body: new URLSearchParams(new FormData(form)), credentials: "same-origin" })
      .then(function (answer) { return answer.ok ? answer.text() : ""; })
      .then(function (html) {
        if (turn === asked) {
          place.removeAttribute("aria-busy");
          if (html) {
            place.replaceChildren.apply(place, Array.from(new DOMParser().parseFromString(html, "text/html").body.childNodes));
          }
        }
      })
      .catch(function () {});
  }

  function send(form) {
    return fetch(form.action, { method: "POST", body: new URLSearchParams(new FormData(form)), credentials: "same-origin" });
  }

  document.addEventListener("input", function (event) {
    if (event.target.type === "range") {
      var out = event.target.parentElement.querySelector("output");
      if (out) {
        out.textContent = String(Math.round(event.target.value * 10) / 10);
      }
    }
  });

  document.addEventListener("change", function (event) {
    var form = event.target.form;
    if (!form) {
      return;
    }
    if (form.hasAttribute("data-live")) {
      var mine = ++asked;
      form.setAttribute("aria-busy", "true");
      send(form).then(function (answer) {
        return answer.ok ? answer.text().then(function (html) {
          if (mine === asked && !swap(html, answer.url)) {
            location.href = answer.url;
          }
        }) : form.submit();
      }).catch(function () {
        form.submit();
      });
    } else if (form.dataset.count) {
      count(form);
    }
  });

  var talk = document.querySelector("form[data-count]");
  if (talk && !talk.parentElement.querySelector(".tofault")) {
    count(talk);
  }
  rest();

  /* What is ticked but not sent yet outlives a reload, until the job is written anew. */
  var ticks = document.querySelector("form.checklist");
  if (ticks) {
    var job = "ticked " + location.pathname + " " + ticks.elements.revision.value;
    var boxes = Array.from(ticks.querySelectorAll("input[type=checkbox]"));
    var before = (sessionStorage.getItem(job) || "").split(" ");
    boxes.forEach(function (box) { box.checked = box.checked || before.indexOf(box.value) >= 0; });
    ticks.addEventListener("change", function () {
      sessionStorage.setItem(job, boxes.filter(function (box) { return box.checked; })
        .map(function (box) { return box.value; }).join(" "));
    });
  }

  /* A place on the page that is gone to is no other page: what was typed stays. */
  window.addEventListener("popstate", function () {
    if (location.pathname + location.search !== shown) {
      location.reload();
    }
  });
})();
