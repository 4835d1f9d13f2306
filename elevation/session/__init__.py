"""The one mutable thing: current room, history, file, selection, gestures; plain listeners.

``session.session.Session`` is the way in. A drag is a ``Gesture`` over a candidate room: moves only store where the
pointer is, and what follows from it is worked out when somebody looks.
"""
