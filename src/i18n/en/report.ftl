# Monthly reports of the manager.
