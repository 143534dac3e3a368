package org.castwright.meshio;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.PushbackInputStream;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.castwright.mesh.MeshException;

/** A reader of XML elements that follows no reference out of the file and takes no DOCTYPE. */
final class SafeXml {

  private static final XMLInputFactory FACTORY = factory();

  /** Long enough for the address of an extension. */
  private static final int LONGEST_QUOTE = 100;

  private static final byte[] UTF8_MARK = {(byte) 0xef, (byte) 0xbb, (byte) 0xbf};

  private final Source source;
  private final String part;
  private final XMLStreamReader in;

  SafeXml(Source source, String part, InputStream stream) {
    this.source = source;
    this.part = part;
    try {
      synchronized (FACTORY) {
        in = FACTORY.createXMLStreamReader(decoded(stream));
      }
    } catch (XMLStreamException e) {
      throw broken(e);
    } catch (IOException e) {
      throw damaged(e);
    }
  }

  /**
   * The text of the part, UTF-8 or UTF-16 as 3MF has it. Decoded here because the parser of the JDK
   * prints to the console when a byte does not fit; here such a byte becomes a replacement mark.
   */
  private static Reader decoded(InputStream stream) throws IOException {
    PushbackInputStream in = new PushbackInputStream(stream, UTF8_MARK.length);
    byte[] head = in.readNBytes(UTF8_MARK.length);
    if (Arrays.equals(head, UTF8_MARK)) {
      return new InputStreamReader(in, StandardCharsets.UTF_8);
    }
    in.unread(head);
    boolean big = head.length > 1 && (head[0] & 0xff) == 0xfe && (head[1] & 0xff) == 0xff;
    boolean little = head.length > 1 && (head[0] & 0xff) == 0xff && (head[1] & 0xff) == 0xfe;
    return new InputStreamReader(
        in, big || little ? StandardCharsets.UTF_16 : StandardCharsets.UTF_8);
  }

  private static XMLInputFactory factory() {
    XMLInputFactory f = XMLInputFactory.newDefaultFactory();
    f.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    f.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    f.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, false);
    return f;
  }

  /** Goes to the next start or end of an element; false at the end. */
  boolean next() {
    try {
      while (in.hasNext()) {
        switch (in.next()) {
          case XMLStreamConstants.START_ELEMENT, XMLStreamConstants.END_ELEMENT -> {
            return true;
          }
          case XMLStreamConstants.DTD, XMLStreamConstants.ENTITY_REFERENCE ->
              throw fault(
                  "it holds a DOCTYPE or an entity, which 3MF forbids",
                  "export the model again with another program");
          default -> {}
        }
      }
      return false;
    } catch (XMLStreamException e) {
      throw broken(e);
    }
  }

  boolean isStart() {
    return in.isStartElement();
  }

  /** The namespace of the element, empty if it has none. */
  String namespace() {
    String s = in.getNamespaceURI();
    return s == null ? "" : s;
  }

  String name() {
    return in.getLocalName();
  }

  /** The namespace a prefix stands for at this element, null if for none. */
  String namespaceOf(String prefix) {
    return in.getNamespaceURI(prefix);
  }

  /** An attribute without a namespace, null if it is missing. */
  String attribute(String name) {
    return attribute("", name);
  }

  String attribute(String namespace, String name) {
    for (int i = 0; i < in.getAttributeCount(); i++) {
      String space = in.getAttributeNamespace(i);
      if (in.getAttributeLocalName(i).equals(name)
          && (space == null ? "" : space).equals(namespace)) {
        return in.getAttributeValue(i);
      }
    }
    return null;
  }

  /** An attribute that must be a finite number. */
  double number(String name) {
    String s = required(name);
    double v = XmlNumbers.decimal(s.trim());
    if (!Double.isFinite(v)) {
      throw fault(
          "'" + name + "' of <" + name() + "> is " + quote(s) + ", not a finite number",
          "repair the model in the program that made it");
    }
    return v;
  }

  /** An attribute that must be a whole number from 0 on. */
  int index(String name) {
    String s = required(name);
    int v = XmlNumbers.index(s.trim());
    if (v < 0) {
      throw fault(
          "'" + name + "' of <" + name() + "> is " + quote(s) + ", not a whole number from 0 on",
          Source.EXPORT_AGAIN);
    }
    return v;
  }

  private String required(String name) {
    String s = attribute(name);
    if (s == null) {
      throw fault("<" + name() + "> has no '" + name + "'", Source.EXPORT_AGAIN);
    }
    return s;
  }

  int line() {
    return in.getLocation().getLineNumber();
  }

  MeshException fault(String what, String remedy) {
    return source.fault(part + " line " + line(), what, remedy);
  }

  static String quote(String s) {
    String shown = s.length() > LONGEST_QUOTE ? s.substring(0, LONGEST_QUOTE) + "..." : s;
    return "'" + shown.replaceAll("[^\\x20-\\x7e]", "?") + "'";
  }

  private MeshException damaged(IOException e) {
    return source.fault(part, "the zip is damaged", Source.EXPORT_AGAIN, e);
  }

  private MeshException broken(XMLStreamException e) {
    if (e.getNestedException() instanceof IOException io) {
      return damaged(io);
    }
    int line = e.getLocation() == null ? 1 : e.getLocation().getLineNumber();
    return source.fault(part + " line " + line, "its XML is broken", Source.EXPORT_AGAIN, e);
  }
}
