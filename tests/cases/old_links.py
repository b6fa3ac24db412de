"""Links of older layouts, made by the code of their time and never to be made anew.

Each from ``ordinary_job(QUARTERS)`` and ``whole_job()``: those of the first layout when the figures
in a link were worded in English, those of the second when sag that was not measured counted as much
up as down.
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
ORDINARY_2 = (
    "2eNqlj11LwzAUhv_K8ejwJg1J1vQjiCB4J-KdCqUX3ZrZbl0z-oEXy_67J0NBxTsTEvK-eZ9zkuKIFZojWjQo8ySDtZsPlsG"
    "qmy0y3JD9nDHoHYc4TiVZb2TpaDxYW5NqST1yeLBdZwfSW9J3HF7afjrrHWklVBJJGSlNRkfGU29hNQ8DjJPrbQ1us4GpsbB"
    "1hHE8MVyFN60puq92drgeYV_1c9UxOHCQKopDxoXMPRrJNakaTXHEi-BpOhaCUUuuaVe0ypJhQrYoKXoZQq9olgyvqEVju_C"
    "TL0oESJ23b9SJ_S5-TjDx78oM0_PTMzQpw5xgJUK3H7qkyQqcGjd7zYWXgguqnPHEy5RLL3jqYxNrfyMX3s3T2NbWK557SZc"
    "BeG-npu0JkWQueUZE4rWR2t_m-eLz-g_C00ipnYkFluUHvvGTMA"
)
WHOLE_2 = (
    "2eNrlVUtv00AQ_iuwgLisVzuzbwtx4sIbLoCIoqoPV4lIG2gSKlT3v_ON46DayYGKIzk4u59nvnl8s-vJjTpR9Y3aqJq0-tk"
    "9r1WdtTpVtVrPmgcXx9-aq6cr_F9ujhfqVqulOLyAKdYzWb9UdTRBq1eqTlq9VjVbrd7A_-R4sVBavVW1NzHD4t125bB8r-r"
    "JjfoM4wTrL3C91d2-7LZTrT7sjCh0YO5tYtxuDfUAUeoR3iEx94jrEabSI36H9KGzCT3imHokSvyPCGVR5g8p8xOSIc06TIF"
    "cCfIV5eguGNtdfmrV5WxR_vf5Yrk-OlleNWiCUzVqCHg5qSy61T2s8WX488CCHfxoikwiHO1UshTm88Wv61nTLI7Oj0-FvKO"
    "1WrKDtWR-1mXxULL04qp90OgsofWUrWYOWqp3FKa9e9SVM0TEsWSXmG222emKkCOeZEKJIRAT-VBc1lU0ozT1AXd4u2GBeo9"
    "qqifRIL2KTUjZcyL2yUfKRVfFlNBFd_6OS0L4gDfj8HbgniW6HzQ4S_TsB9F3zdXSXvVIOgYlnVaP0ehZszhDf_-yhdYk0bQ"
    "EMHsKPlrKrjhAcdwryE822giTRCmVzAKl0TgItsdW7dGxHrNR4TtTI2Nzn1FgE0VMsGQbKDhXfPSaTDlQhS--JGl4djZkx52"
    "Mwyq2kzViq_bovB6zcXJ3Z_9fxdkTwWIWcuBMLnl2OaRDSuEC4RgTR8xNzjH5psJlIyLIY0xQHdKaTIyo2wcXMbzJ-QyOOCg"
    "tdec14yrBjVJwNRUrqg0BOFyg7rPldbNYqfuqilGChpw4FRzPCMu0LVlgIsvsLPvI0CgGSbCrr4wn8gCFTOle0c44h4ksNrm"
    "cML0l7hX9H-np7EhPAXo911fzC3ULrwm-uMtNG4xtcXXZNhuLfhAbbtmb0OLT0PrahvYZPWmXm_Vqfta0OEd4kVtcf-31fD2"
    "bX7bwSMDdzkY-Pya2CQiOWJuE4nkpT_7Yw3xMga0w7La-LbXvsoGtuweR5DwkIqum09-k6e3Q"
)
