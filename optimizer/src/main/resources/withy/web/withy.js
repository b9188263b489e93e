"use strict";
(function () {
  function swap(html, url) {
    var page = new DOMParser().parseFromString(html, "text/html");
    var fresh = page.querySelector("main");
    var old = document.querySelector("main");
    if (!fresh || !old) {
      return false;
    }
    var focus = document.activeElement && document.activeElement.id;
    old.replaceWith(document.adoptNode(fresh));
    document.title = page.title;
    history.pushState(null, "", url);
    var again = focus && document.getElementById(focus);
    if (again) {
      again.focus({ preventScroll: true });
    }
    return true;
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

  var asked = 0;
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
      var count = document.getElementById("count");
      var turn = ++asked;
      fetch(form.dataset.count, { method: "POST", body: new URLSearchParams(new FormData(form)), credentials: "same-origin" })
        .then(function (answer) { return answer.ok ? answer.text() : ""; })
        .then(function (html) {
          if (turn === asked && html && count) {
            count.replaceChildren.apply(count, Array.from(new DOMParser().parseFromString(html, "text/html").body.childNodes));
          }
        })
        .catch(function () {});
    }
  });

  window.addEventListener("popstate", function () {
    location.reload();
  });
})();
