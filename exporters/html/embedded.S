// The page's style and script as they are, between two names each.
    .section .rodata
    .global lamwright_page_style
    .global lamwright_page_style_end
    .global lamwright_page_script
    .global lamwright_page_script_end
lamwright_page_style:
    .incbin LAMWRIGHT_PAGE_STYLE
lamwright_page_style_end:
    .byte 0
lamwright_page_script:
    .incbin LAMWRIGHT_PAGE_SCRIPT
lamwright_page_script_end:
    .byte 0
    .section .note.GNU-stack,"",%progbits
