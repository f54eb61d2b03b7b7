"""The site on disk: templates filled, assets, data files; all or nothing."""
