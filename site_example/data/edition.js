document.documentElement.dataset.edition = "ab239001";
