document.documentElement.dataset.edition = "6754b77d";
