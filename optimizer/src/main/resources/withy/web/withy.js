"use strict";
(function () {
  var asked = 0;
  var shown = location.pathname + location.search;

  /* What only answers a form is no page to come back to: going back or loading again shows where the form was. */
  var answers = document.querySelector("[data-back]");
  if (answers) {
    history.replaceState(null, "", answers.dataset.back);
    shown = location.pathname + location.search;
  }

  /* What an element is known by on the page that comes in its place. */
  function mark(e) {
    return e.id || [e.tagName, e.getAttribute("href"), e.name, e.getAttribute("aria-label") || e.textContent.trim()].join("|");
  }

  function same(e, within) {
    var like = mark(e);
    return Array.from(within.querySelectorAll(e.tagName)).find(function (other) { return mark(other) === like; });
  }

  /* What had the focus and is not on the page that came: it is looked for on those that come after it, as long as nothing else was gone to. */
  var lost = null;

  function top(e) {
    return e.getBoundingClientRect().top;
  }

  /* Where the eye was, told by what had the focus. */
  function stand(old) {
    var e = document.activeElement;
    return old.contains(e) && e !== old ? { e: e, top: top(e) } : lost;
  }

  /* Gives the focus back where it was, as far from the top of the window as it was. */
  function restore(was, fresh, quiet) {
    var now = was && same(was.e, fresh);
    lost = was && !now && fresh.querySelector("[data-rest]") ? was : null;
    if (now) {
      now.focus({ preventScroll: true });
      if (was.top > 0 && was.top < window.innerHeight) {
        window.scrollBy({ top: top(now) - was.top, behavior: "instant" });
        now.scrollIntoView({ block: "nearest", behavior: "instant" });
      }
    } else if (was && !lost && !quiet) {
      window.scrollTo({ top: 0, behavior: "instant" });
      (fresh.querySelector("[autofocus]") || fresh).focus();
    }
  }

  function swap(html, url, quiet, back) {
    var page = new DOMParser().parseFromString(html, "text/html");
    var fresh = page.querySelector("main");
    var old = document.querySelector("main");
    if (!fresh || !old) {
      return false;
    }
    var was = back || stand(old);
    var whole = document.activeElement === old;
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
    tell(told(fresh), quiet);
    rest();
    remember();
    moved.forEach(function (one) {
      if (one[1]) {
        one[1].scrollLeft = one[0];
      }
    });
    restore(was, fresh, quiet);
    if (whole && document.activeElement === document.body) {
      fresh.focus({ preventScroll: true });
    }
    return true;
  }

  /* What was done, for who hears the page; what comes by and by adds to what was said, but not to what was undone. */
  var undone = "";
  function told(page) {
    return Array.from(page.querySelectorAll("[data-told]")).map(function (e) { return e.textContent.trim(); }).join(" ");
  }

  function tell(done, quiet) {
    var heard = document.getElementById("told");
    var words = undone || done;
    if (heard.textContent !== words && (words && heard.textContent || !quiet)) {
      heard.textContent = words;
    }
  }

  document.addEventListener("focusin", function (event) {
    lost = lost && event.target.tagName !== "MAIN" ? null : lost;
  });

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

  /* What was changed last, so that the focus is there when it is undone. */
  var changed = null;

  /* Undoes in its place; what does not work so goes the usual way. */
  function undo(link) {
    var mine = ++asked;
    fetch(link.href, { credentials: "same-origin" }).then(function (answer) { return answer.ok ? answer.text() : ""; }).then(function (html) {
      if (mine !== asked) { return; }
      undone = link.dataset.said;
      if (!html || !swap(html, link.href, false, { e: changed || link, top: window.innerHeight / 2 })) {
        location.href = link.href;
      }
      changed = null;
    }).catch(function () { location.href = link.href; });
  }

  document.addEventListener("click", function (event) {
    var link = event.target.closest("a[data-inplace]");
    if (link && event.button === 0 && !(event.ctrlKey || event.metaKey || event.shiftKey || event.altKey)) {
      event.preventDefault();
      undo(link);
    }
  });

  /* The keys that undo everywhere undo here as well, unless a line is being typed. */
  document.addEventListener("keydown", function (event) {
    var link = document.querySelector(".did a[data-inplace]");
    var typing = event.target.matches("textarea, input[type=text]");
    if (link && !typing && event.key.toLowerCase() === "z" && (event.ctrlKey || event.metaKey) && !event.shiftKey && !event.altKey) {
      event.preventDefault();
      undo(link);
    }
  });

  /* Sends a form and puts what is answered in place; what does not work so goes the usual way. */
  function send(form, button) {
    var mine = ++asked;
    undone = form.dataset.said || "";
    changed = button || document.activeElement;
    var told = new URLSearchParams(new FormData(form));
    if (button) {
      told.set(button.name, button.value);
      button.focus({ preventScroll: true });
    }
    form.setAttribute("aria-busy", "true");
    fetch(form.action, { method: "POST", body: told, credentials: "same-origin" }).then(function (answer) {
      return answer.ok ? answer.text().then(function (html) {
        if (mine === asked && !swap(html, answer.url)) {
          location.href = answer.url;
        }
      }) : plainly(form, button);
    }).catch(function () {
      plainly(form, button);
    });
  }

  function plainly(form, button) {
    if (button) {
      var told = document.createElement("input");
      told.type = "hidden";
      told.name = button.name;
      told.value = button.value;
      form.append(told);
    }
    sessionStorage.setItem("sent", form.dataset.said || "yes");
    form.submit();
  }

  document.addEventListener("submit", function (event) {
    if (event.target.hasAttribute("data-inplace") && event.submitter) {
      event.preventDefault();
      send(event.target, event.submitter);
    }
  });

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
      send(form);
    } else if (form.dataset.count) {
      count(form);
    }
  });

  var talk = document.querySelector("form[data-count]");
  if (talk && !talk.parentElement.querySelector(".tofault")) {
    count(talk);
  }
  rest();

  /* What is ticked but not sent yet outlives a reload, and what another window changed, as long as the same part stands there. */
  function remember() {
    var ticks = document.querySelector("form.checklist");
    if (!ticks) {
      return;
    }
    var job = "ticked " + location.pathname;
    var boxes = Array.from(ticks.querySelectorAll("input[type=checkbox]"));
    var named = function (box) { return box.value + " " + box.closest("label").textContent.trim(); };
    var before = (sessionStorage.getItem(job) || "").split("\n");
    boxes.forEach(function (box) { box.checked = box.checked || before.indexOf(named(box)) >= 0; });
    ticks.addEventListener("change", function () {
      sessionStorage.setItem(job, boxes.filter(function (box) { return box.checked; }).map(named).join("\n"));
    });
  }
  remember();

  /* A place on the page that is gone to is no other page: what was typed stays. */
  window.addEventListener("popstate", function () {
    if (location.pathname + location.search !== shown) {
      location.reload();
    }
  });
})();
