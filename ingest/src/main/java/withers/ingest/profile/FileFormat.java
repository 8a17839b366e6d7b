package withers.ingest.profile;

import java.nio.charset.Charset;

/**
 * How a source writes its files.
 *
 * @param charset for files that are not UTF-8
 * @param date how days are written
 */
public record FileFormat(char delimiter, Charset charset, DatePattern date) {}
