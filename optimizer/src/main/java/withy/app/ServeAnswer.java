package withy.app;

/**
 * What {@code serve} answers once the page is open; its fields in this order are the published JSON.
 *
 * @param schema format of the answer
 * @param address what to open in a browser on this machine; its key lets that browser in
 */
public record ServeAnswer(int schema, String address) {}
