"""The one mutable thing: the current Room, history, path, selection and gestures."""
