# People, areas, settings.
