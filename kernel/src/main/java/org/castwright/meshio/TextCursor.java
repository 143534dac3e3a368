package org.castwright.meshio;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import org.castwright.mesh.MeshException;

/**
 * Walks the words of a text file line by line without making objects, and parses numbers correctly
 * rounded. Lines end in LF, CR LF or CR; a backslash at the end of a line joins the next.
 */
final class TextCursor {

  /** Whole numbers up to this are doubles without rounding. */
  private static final long EXACT = 1L << 53;

  /** A decimal of so many digits fits a long. */
  private static final int LONG_DIGITS = 18;

  /** Larger exponents cannot change the answer: zero or infinite. */
  private static final int EXPONENT_CAP = 100_000;

  private final Source source;
  private final byte[] text;
  private final int comment;
  private int at;
  private int line = 1;
  private boolean fresh = true;

  /**
   * @param comment the character that starts a comment, or 0 if the format has none
   */
  TextCursor(Source source, int start, int comment) {
    this.source = source;
    this.text = source.bytes();
    this.at = start;
    this.comment = comment;
  }

  int line() {
    return line;
  }

  int position() {
    return at;
  }

  /** Moves to the next line with a word on it; false at the end of the file. */
  boolean nextLine() {
    if (fresh) {
      fresh = false;
      if (hasWord()) {
        return true;
      }
    }
    while (endLine()) {
      if (hasWord()) {
        source.progress(line, at, text.length);
        return true;
      }
    }
    return false;
  }

  /** Whether a word is left on this line; stands on it if so. */
  boolean hasWord() {
    while (at < text.length) {
      int b = text[at];
      if (b == ' ' || b == '\t' || b == '\f' || b == 0x0b) {
        at++;
      } else if (b == '\\' && at + 1 < text.length && isBreak(text[at + 1])) {
        at++;
        at += breakLength();
        line++;
      } else {
        return !isBreak(b) && (comment == 0 || b != comment);
      }
    }
    return false;
  }

  /** Whether a word is left in the file; stands on it, on a later line if need be. */
  boolean hasWordAhead() {
    if (hasWord()) {
      fresh = false;
      return true;
    }
    return nextLine();
  }

  /** Steps over the word at hand if it is the one given (lower case), else stays. */
  boolean take(String word) {
    if (!hasWord() || !source.hasWord(at, word)) {
      return false;
    }
    int end = at + word.length();
    if (end < text.length && !isGap(text[end])) {
      return false;
    }
    at = end;
    return true;
  }

  /** The word at hand, stepped over; the empty string at the end of the line. */
  String word() {
    if (!hasWord()) {
      return "";
    }
    int start = at;
    skipWord();
    return new String(text, start, at - start, StandardCharsets.UTF_8);
  }

  void skipWord() {
    while (at < text.length && !isGap(text[at])) {
      at++;
    }
  }

  /** The whole number at hand; anything glued to it after a slash is stepped over. */
  long integer(String what) {
    if (!hasWord()) {
      throw missing(what);
    }
    int start = at;
    boolean minus = text[at] == '-';
    if (minus || text[at] == '+') {
      at++;
    }
    int digits = at;
    long value = 0;
    while (at < text.length && isDigit(text[at]) && at - digits < LONG_DIGITS) {
      value = 10 * value + (text[at] - '0');
      at++;
    }
    boolean good = at > digits && (at == text.length || isGap(text[at]) || text[at] == '/');
    skipWord();
    if (!good) {
      throw wrong(what, start);
    }
    return minus ? -value : value;
  }

  /** The finite decimal number at hand, rounded to the nearest double. */
  double number(String what) {
    if (!hasWord()) {
      throw missing(what);
    }
    int start = at;
    boolean minus = text[at] == '-';
    if (minus || text[at] == '+') {
      at++;
    }
    long mantissa = 0;
    int digits = 0;
    int significant = 0;
    int exponent = 0;
    boolean fraction = false;
    for (; at < text.length; at++) {
      int b = text[at];
      if (isDigit(b)) {
        digits++;
        if (significant > 0 || b != '0') {
          significant++;
        }
        if (significant <= LONG_DIGITS) {
          mantissa = 10 * mantissa + (b - '0');
          exponent -= fraction ? 1 : 0;
        } else {
          exponent += fraction ? 0 : 1;
        }
      } else if (b == '.' && !fraction) {
        fraction = true;
      } else {
        break;
      }
    }
    if (digits == 0 || !takeGap(start)) {
      exponent += takeExponent(what, start, digits);
    }
    double value =
        significant <= LONG_DIGITS && mantissa <= EXACT && Math.abs(exponent) < Decimals.TEN.length
            ? exact(mantissa, exponent, minus)
            : Double.parseDouble(new String(text, start, at - start, StandardCharsets.ISO_8859_1));
    if (Double.isInfinite(value)) {
      throw wrong(what, start);
    }
    return value;
  }

  /**
   * Both operands are exact, so one rounding is left and the quotient or product is the nearest.
   */
  private static double exact(long mantissa, int exponent, boolean minus) {
    double v =
        exponent < 0 ? mantissa / Decimals.TEN[-exponent] : mantissa * Decimals.TEN[exponent];
    return minus ? -v : v;
  }

  private boolean takeGap(int start) {
    return at > start && (at == text.length || isGap(text[at]));
  }

  private int takeExponent(String what, int start, int mantissaDigits) {
    boolean e = at < text.length && (text[at] == 'e' || text[at] == 'E');
    if (mantissaDigits == 0 || !e) {
      throw wrong(what, start);
    }
    at++;
    boolean minus = at < text.length && text[at] == '-';
    if (minus || (at < text.length && text[at] == '+')) {
      at++;
    }
    int digits = at;
    int value = 0;
    for (; at < text.length && isDigit(text[at]); at++) {
      value = Math.min(EXPONENT_CAP, 10 * value + (text[at] - '0'));
    }
    if (at == digits || !takeGap(start)) {
      throw wrong(what, start);
    }
    return minus ? -value : value;
  }

  MeshException fault(String what, String remedy) {
    return source.fault("line " + line, what, remedy);
  }

  /** The word at hand for a message. */
  String quote() {
    if (!hasWord()) {
      return "the end of the line";
    }
    int end = at;
    while (end < text.length && !isGap(text[end])) {
      end++;
    }
    return source.quote(at, end);
  }

  private MeshException missing(String what) {
    String found = at >= text.length ? "the file ends" : "the line ends";
    return fault(what + " is missing where " + found, Source.EXPORT_AGAIN);
  }

  private MeshException wrong(String what, int start) {
    at = start;
    int end = start;
    while (end < text.length && !isGap(text[end])) {
      end++;
    }
    String token = new String(text, start, end - start, StandardCharsets.ISO_8859_1);
    String low = token.toLowerCase(Locale.ROOT);
    boolean infinite =
        low.contains("nan")
            || low.contains("inf")
            || low.contains("#")
            || low.matches("[-+0-9.e]+");
    return fault(
        what
            + " is "
            + source.quote(start, end)
            + ", not a "
            + (infinite ? "finite " : "")
            + "number",
        infinite ? "repair the model in the program that made it" : Source.EXPORT_AGAIN);
  }

  /** Steps behind the end of this line; false at the end of the file. */
  private boolean endLine() {
    while (at < text.length && !isBreak(text[at])) {
      at++;
    }
    if (at >= text.length) {
      return false;
    }
    at += breakLength();
    line++;
    return true;
  }

  private int breakLength() {
    return text[at] == '\r' && at + 1 < text.length && text[at + 1] == '\n' ? 2 : 1;
  }

  private static boolean isBreak(int b) {
    return b == '\n' || b == '\r';
  }

  private static boolean isGap(int b) {
    return b == ' ' || (b >= '\t' && b <= '\r');
  }

  private static boolean isDigit(int b) {
    return b >= '0' && b <= '9';
  }
}
