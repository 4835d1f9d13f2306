"""Wall and scheme to a SetOut: where everything lands, in mm.

``set_out(room, wall_id, scheme_id, trade) -> SetOut`` is the way in (module ``setting_out.whole``).
"""
