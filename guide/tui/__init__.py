"""The terminal app: screens, widgets, messages, keys and styles. It holds no arithmetic."""
