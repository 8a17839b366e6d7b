package withers.ingest.xlsx;

import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * Goes through an XML part, from tag to tag. It knows no document types and no entities, and its
 * depth is bounded, so it needs little memory whatever the part holds.
 */
final class PartReader implements AutoCloseable {

  private static final XMLInputFactory XML = factory();

  private final InputStream in;
  private final XMLStreamReader reader;
  private final StringBuilder text = new StringBuilder();
  private int depth;

  /**
   * @param most how many bytes the part may have
   */
  PartReader(InputStream in, long most) throws XMLStreamException {
    this.in = in;
    this.reader = XML.createXMLStreamReader(new TagGuard(in, most));
  }

  private static XMLInputFactory factory() {
    XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    return factory;
  }

  /** Goes on to the next start or end of an element; false at the end of the part. */
  boolean next() throws XMLStreamException {
    text.setLength(0);
    while (reader.hasNext()) {
      switch (reader.next()) {
        case XMLStreamConstants.START_ELEMENT -> {
          deeper();
          return true;
        }
        case XMLStreamConstants.END_ELEMENT -> {
          depth--;
          return true;
        }
        case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA -> take();
        case XMLStreamConstants.DTD, XMLStreamConstants.ENTITY_REFERENCE ->
            throw new XMLStreamException("A document type or an entity");
        default -> {
          // Comments and the like say nothing.
        }
      }
    }
    return false;
  }

  private void deeper() throws XMLStreamException {
    depth++;
    if (depth > Bounds.DEPTH) {
      throw new XMLStreamException("Elements deeper than %d".formatted(Bounds.DEPTH));
    }
  }

  private void take() throws XMLStreamException {
    if (text.length() <= Bounds.BETWEEN_TAGS) {
      text.append(reader.getTextCharacters(), reader.getTextStart(), reader.getTextLength());
    }
  }

  boolean starts(String name) {
    return reader.isStartElement() && reader.getLocalName().equals(name);
  }

  boolean ends(String name) {
    return reader.isEndElement() && reader.getLocalName().equals(name);
  }

  /** An attribute of the element that starts here, in whatever namespace; empty elsewhere. */
  Optional<String> attribute(String name) {
    int count = reader.isStartElement() ? reader.getAttributeCount() : 0;
    for (int i = 0; i < count; i++) {
      if (reader.getAttributeLocalName(i).equals(name)) {
        return Optional.of(reader.getAttributeValue(i));
      }
    }
    return Optional.empty();
  }

  /** The text since the last start or end of an element. */
  CharSequence text() {
    return text;
  }

  @Override
  public void close() throws IOException, XMLStreamException {
    try (in) {
      reader.close();
    }
  }
}
