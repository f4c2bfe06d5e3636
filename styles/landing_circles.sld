<?xml version="1.0" encoding="UTF-8"?>
<!--
  Landing circles: a thin near-black line over a wider white one, no fill.

  The pair of dark and light shows on dark and on pale ground, in colour or in grey, and nothing covers
  the score inside the circle. The line belongs to the site's rim, so both have its colour.
-->
<StyledLayerDescriptor version="1.0.0"
    xmlns="http://www.opengis.net/sld"
    xmlns:ogc="http://www.opengis.net/ogc"
    xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance"
    xsi:schemaLocation="http://www.opengis.net/sld http://schemas.opengis.net/sld/1.0.0/StyledLayerDescriptor.xsd">
  <NamedLayer>
    <Name>landing_circles</Name>
    <UserStyle>
      <Title>Landing circles</Title>
      <FeatureTypeStyle>
        <Rule>
          <Title>Holds 95 % of landings</Title>
          <LineSymbolizer>
            <Stroke>
              <CssParameter name="stroke">#ffffff</CssParameter>
              <CssParameter name="stroke-width">3</CssParameter>
              <CssParameter name="stroke-opacity">0.7</CssParameter>
            </Stroke>
          </LineSymbolizer>
          <LineSymbolizer>
            <Stroke>
              <CssParameter name="stroke">#1a1a1a</CssParameter>
              <CssParameter name="stroke-width">1</CssParameter>
            </Stroke>
          </LineSymbolizer>
        </Rule>
      </FeatureTypeStyle>
    </UserStyle>
  </NamedLayer>
</StyledLayerDescriptor>
