package withy.units;

/** Which sign separates the decimals of a number. */
public enum DecimalMark {
    POINT,
    COMMA,
    /** Point or comma; a comma before exactly three digits ("1,500") is refused, since it may be a thousands sign. */
    EITHER
}
