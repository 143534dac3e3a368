package org.castwright.pictures;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;

/** Writes caption, legend, scale bar and labels over a drawn scene. */
final class Overlay {

  private static final Font CAPTION = new Font(Font.SANS_SERIF, Font.PLAIN, 22);
  private static final Font SMALL = new Font(Font.SANS_SERIF, Font.PLAIN, 16);
  private static final Font LABEL = new Font(Font.SANS_SERIF, Font.BOLD, 16);
  private static final Color WORDS = new Color(Band.INK);
  private static final Color BOX = new Color(255, 255, 255, 225);
  private static final int BAR_WIDTH = 24;
  private static final int SWATCH = 18;
  private static final int PAD = 5;
  private static final double DOT = 4.5;

  /** Where a label may stand about its point: distance in pixels by direction, tried in order. */
  private static final int[][] DIRECTIONS = {
    {1, -1}, {-1, -1}, {1, 1}, {-1, 1}, {1, 0}, {-1, 0}, {0, -1}, {0, 1}
  };

  private static final int[] DISTANCES = {26, 50, 80, 120, 170};

  private final Graphics2D g;
  private final Scene scene;
  private final Camera camera;
  private final Margins margins;

  Overlay(BufferedImage image, Scene scene, Camera camera, Margins margins) {
    g = image.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    this.scene = scene;
    this.camera = camera;
    this.margins = margins;
  }

  void draw() {
    caption();
    legend();
    scene.scale().ifPresent(this::scaleBar);
    marks();
    g.dispose();
  }

  private void caption() {
    if (scene.caption().isEmpty()) {
      return;
    }
    g.setColor(WORDS);
    Font font = CAPTION;
    double room = margins.width() - 2.0 * Margins.EDGE;
    double wide = g.getFontMetrics(font).stringWidth(scene.caption());
    if (wide > room) {
      font = font.deriveFont((float) (font.getSize() * room / wide));
    }
    g.setFont(font);
    g.drawString(scene.caption(), Margins.EDGE, margins.height() - Margins.EDGE + 8);
  }

  private void legend() {
    int x = Margins.EDGE;
    int y = 22;
    g.setFont(SMALL);
    for (Swatch s : scene.legend()) {
      swatch(x, y, s.rgb());
      g.drawString(s.name(), x + SWATCH + 8, y + 15);
      x += SWATCH + 8 + g.getFontMetrics().stringWidth(s.name()) + 28;
    }
  }

  private void swatch(int x, int y, int rgb) {
    g.setColor(new Color(rgb));
    g.fillRect(x, y, SWATCH, SWATCH);
    g.setColor(WORDS);
    g.setStroke(new BasicStroke(1));
    g.drawRect(x, y, SWATCH, SWATCH);
  }

  private void scaleBar(ColorScale scale) {
    int x = margins.width() - Margins.SCALE_BAR + 46;
    int top = Margins.EDGE + 40;
    boolean apart = !scale.apartName().isEmpty();
    int bottom = margins.height() - Margins.CAPTION - (apart ? 50 : 10);
    for (int row = top; row < bottom; row++) {
      double share = (bottom - 0.5 - row) / (bottom - top);
      g.setColor(new Color(Cividis.rgb(share)));
      g.fillRect(x, row, BAR_WIDTH, 1);
    }
    g.setColor(WORDS);
    g.setStroke(new BasicStroke(1));
    g.drawRect(x, top, BAR_WIDTH, bottom - top);
    g.setFont(SMALL);
    int titleWidth = g.getFontMetrics().stringWidth(scale.title());
    g.drawString(scale.title(), margins.width() - 14 - titleWidth, top - 16);
    double step = Ticks.step(scale.low(), scale.high());
    for (double v : Ticks.of(scale.low(), scale.high())) {
      double share = (v - scale.low()) / (scale.high() - scale.low());
      double y = bottom - share * (bottom - top);
      g.draw(new Line2D.Double(x + BAR_WIDTH, y, x + BAR_WIDTH + 6.0, y));
      g.drawString(Ticks.label(v, step), x + BAR_WIDTH + 11, (float) (y + 6));
    }
    if (apart) {
      swatch(x + 3, bottom + 20, scale.apartRgb());
      g.drawString(scale.apartName(), x + BAR_WIDTH + 7, bottom + 35);
    }
  }

  private void marks() {
    List<Rectangle> taken = new ArrayList<>();
    List<double[]> points = new ArrayList<>();
    for (Mark m : scene.marks()) {
      double[] p = new double[3];
      camera.project(m.at(), p);
      p[0] /= Camera.SAMPLES;
      p[1] /= Camera.SAMPLES;
      points.add(p);
      taken.add(new Rectangle((int) p[0] - 6, (int) p[1] - 6, 12, 12));
    }
    g.setFont(LABEL);
    for (int i = 0; i < points.size(); i++) {
      mark(scene.marks().get(i), points.get(i), taken);
    }
  }

  private void mark(Mark m, double[] p, List<Rectangle> taken) {
    int w = g.getFontMetrics().stringWidth(m.label()) + 2 * PAD + 2;
    int h = g.getFontMetrics().getHeight() + PAD;
    Rectangle box = m.label().isEmpty() ? null : place(p, w, h, taken);
    g.setColor(WORDS);
    g.setStroke(new BasicStroke(1.4f));
    if (box != null) {
      double ex = Math.max(box.x, Math.min(p[0], box.x + box.width));
      double ey = Math.max(box.y, Math.min(p[1], box.y + box.height));
      g.draw(new Line2D.Double(p[0], p[1], ex, ey));
    }
    Ellipse2D dot = new Ellipse2D.Double(p[0] - DOT, p[1] - DOT, 2 * DOT, 2 * DOT);
    g.setColor(new Color(m.rgb()));
    g.fill(dot);
    g.setColor(WORDS);
    g.draw(dot);
    if (box != null) {
      taken.add(box);
      g.setColor(BOX);
      g.fillRoundRect(box.x, box.y, box.width, box.height, 8, 8);
      g.setColor(WORDS);
      g.setStroke(new BasicStroke(1));
      g.drawRoundRect(box.x, box.y, box.width, box.height, 8, 8);
      g.drawString(m.label(), box.x + PAD + 1, box.y + h - PAD - 2);
    }
  }

  /** The first free place round the point; the very first one if none is free. */
  private Rectangle place(double[] p, int w, int h, List<Rectangle> taken) {
    Rectangle first = null;
    Rectangle sheet =
        new Rectangle(4, 4, margins.width() - 8, margins.height() - Margins.CAPTION + 12);
    for (int distance : DISTANCES) {
      for (int[] d : DIRECTIONS) {
        int cx = (int) p[0] + d[0] * (distance + w / 2);
        int cy = (int) p[1] + d[1] * (distance + h / 2);
        Rectangle box = new Rectangle(cx - w / 2, cy - h / 2, w, h);
        if (!sheet.contains(box)) {
          continue;
        }
        if (first == null) {
          first = box;
        }
        if (taken.stream().noneMatch(box::intersects)) {
          return box;
        }
      }
    }
    return first;
  }
}
