"""Links of the first layout, as they were sent when the figures in a link were worded in English.

Made by the code of that time from ``ordinary_job(QUARTERS)`` and ``whole_job()``, and never to be
made anew.
"""

from __future__ import annotations

ORDINARY = (
    "1eNqlj8tOwzAQRX9lGKjYOJZt4jy8Q2KHEDtAirJIG5ekTeMqD1jU_XfGEUiA2GHLI9-"
    "re2bs4oQVmhNaNCjzJIONm4-WwbqbLTLckv2UMegdhzhOJVmvZOloPFpbk2pJPXC4t11nB9I70rccntt-"
    "WvSetBIqiaSMlCajI-Oxt7CehwHGyfW2BrfdwtRY2DnCOJ4ZrsObNhQ9VHs7XI9wqPq56hgcOUgVxSHjQuYOjeSa"
    "VI2mOOFF8DRdC8FoJNdUFZ2yZJiQLUqKXobQC5obhlc0orFd-"
    "MkXJQKklvKNOrPfzZcEE__uzDBdnp6hSRnmBCsRpv3QJW1W4NS42WsuvBRcUOeMJ16mXHrBUx-"
    "bWPu5r-0AcuXdPI1tbb3iuZeUCNR7OzVtT5wk84ZnhCVeG6m9eyMqz1efkT8oTyuluSYWWJYfMq2W0A"
)
WHOLE = (
    "1eNrlVU1v20YQ_SvOtkEuy8XO7DfPvTTN5yUpIgiBbTGQENpsZClGYPq_5w1NFSalQ4weqwO1-"
    "zjz5uPNLhd36kLVd2qvatLq-_C8VXXW6lLVarduzq7OvzbbFzf4v96ft-peq04c_oAp1mtZ_6nqaIJWL1WdtPpL1"
    "Wy1egX_i_O2VVq9VrU3McPizcPKYflW1Ys79RHGCdZ_w_VeD_ty2C61encwojCAebSJ8WFraASI0ojwAYl5RNyIM"
    "JUR8QdkDJ1NGBHHNCJR4r9HKIsyv0mZH5AMadZhCWQryCeUo4dgbA_5qZshZ4vy_9m03e7zRbdt0ASnatQQ8HJRW"
    "XRreFjjy_TngQU7-dESmUQ42qVkKcxf2h-"
    "366ZpP385vxTygdZqyQ7WkvlqyOKZZOnFVfug0VlC6ylbzRy0VO8oLEf3qCtniIhjyS4x22yz0xUhRzzJhBJDICb"
    "yobisq2hmaeoT7vB20wL1EdVSL6JBehWbkLLnROyTj5SLroopYYju_COXhPABb-bh7cQ9S3Q_aXCW6NlPoh-"
    "aq6W96jfpGJR0Wv2ORq-bdoX-_mILrUmiaQlg9hR8tJRdcYDivFeQn2y0ESaJUiqZBUqzcRDsiK06omM9Z6PCj6Z"
    "GxuYpo8AmiphgyTZQcK746DWZcqIKX3xJ0vDsbMiOBxmnVTxM1oytOqLzes7GyT2e_f8qzpEIFrOQA2dyybPLIZ1"
    "SChcIx5g4Ym5yjsk3FS4bEUEec4LqlNZkYkTdPriI4U3OZ3DESWlpOK8ZVwlulIKrqVhRbQrA4Qp1r7rbpr1RT1U"
    "VowQNOXEqOJ4RlumhZIGJLLOz7CNDoxgkwaG-Mp_IExQypUdFO-"
    "McJrLY5HLC9JZ4VPT_SE9nZ3oKMOq5226u1D28Fvjidvs-GNvj6rJ9Nhb9IDbcszehx6eh97UN_f561WzP6Hnf7X"
    "c3m1XT4zDhbe5xB_a3m916c93DLQF3Bxv5BpnYJyA4Z30Snu47aEp5_q8PXOY02ArLYev7UvshLdi6J5JJAVMysm"
    "fdi8u2u_yqlsufEgL10A"
)
