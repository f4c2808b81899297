"use strict";
// The page's own part: it hands the fields to the library and shows what comes
// back. There is no arithmetic here.
(() => {
	const state = document.getElementById("state");
	const forms = document.querySelectorAll("form[data-calculator]");

	function show(form) {
		const name = form.dataset.calculator;
		const values = Object.fromEntries(new FormData(form));
		const answer = JSON.parse(tenthouWork(name, JSON.stringify(values)));
		for (const input of form.querySelectorAll("input")) {
			const refused = answer.error && input.name === answer.field;
			input.setAttribute("aria-invalid", refused ? "true" : "false");
			document.getElementById(input.id + "-error").textContent = refused ? answer.error : "";
		}
		const output = document.getElementById(name + "-answer");
		const says = document.createElement("strong");
		says.className = "says";
		says.textContent = answer.error ? "No answer: " + (answer.field ? "one field can't be used." : answer.error) : answer.says;
		const lines = (answer.lines || []).map((text) => {
			const line = document.createElement("span");
			line.className = "line";
			line.textContent = text;
			return line;
		});
		output.replaceChildren(says, ...lines);
		const picture = document.getElementById(name + "-picture");
		picture.replaceChildren();
		if (answer.picture) {
			picture.innerHTML = answer.picture; // made by the library, its texts escaped
		}
	}

	document.addEventListener("tenthou", () => {
		state.textContent = "Ready: change a field and the answer follows.";
		document.documentElement.dataset.ready = "yes";
		for (const form of forms) {
			let waiting = 0;
			form.addEventListener("input", () => {
				clearTimeout(waiting);
				waiting = setTimeout(() => show(form), 250); // so that a reader aloud isn't cut short at each letter
			});
			form.addEventListener("submit", (event) => {
				event.preventDefault();
				show(form);
			});
			show(form);
		}
	});

	const go = new Go();
	fetch("tenthou.wasm")
		.then((answer) => {
			if (!answer.ok) {
				throw new Error(answer.status + " " + answer.statusText);
			}
			return answer.arrayBuffer();
		})
		.then((bytes) => WebAssembly.instantiate(bytes, go.importObject))
		.then((made) => go.run(made.instance))
		.catch((error) => {
			state.textContent = "The library did not load (" + error.message + "): the answers shown are those to the examples.";
		});
})();
