package withy.catalog;

/** Surface of a visible part. */
public enum Gloss {
    MATT,
    SATIN,
    GLOSS
}
