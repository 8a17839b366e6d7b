package withers.report.list;

/**
 * A follow-up that is open and on no list for now, because it was answered or put off.
 *
 * @param reference short name to quote
 * @param animal the animal's name and kind
 * @param record the reader's own record key, or empty
 * @param why what was answered, and until when it rests
 */
public record Resting(String reference, String animal, String record, String why) {}
