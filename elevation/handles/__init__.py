"""What can be dragged, nudged or typed, what it may stick to, and the edit that results.

One family a file: ``handles`` makes its handles from a set-out wall, ``places`` says where they may stick for reasons of
their own (rules bring theirs). ``context.make`` ties a handle to the one figure it writes: a base, a sign and a function
that holds that figure. A new family is listed in ``all_handles.FAMILIES``, and each of its reasons gets a case in
the table of the tests.
"""
