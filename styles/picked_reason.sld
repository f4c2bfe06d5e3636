<?xml version="1.0" encoding="UTF-8"?>
<!--
  Where the one reason stands that the reader of a report picked: 1, else 0, which is not drawn.

  Dark brown (L* 34, C* 35, h 55 degrees; about L* 46 over depth): as warm as the straw of the worst scores but far darker, and the
  dark scores are cool, so it is no step of their ramp to any kind of colour vision. Against the pale veil of the other reasons it
  stands in grey too.
-->
<StyledLayerDescriptor version="1.0.0"
    xmlns="http://www.opengis.net/sld"
    xmlns:ogc="http://www.opengis.net/ogc"
    xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance"
    xsi:schemaLocation="http://www.opengis.net/sld http://schemas.opengis.net/sld/1.0.0/StyledLayerDescriptor.xsd">
  <NamedLayer>
    <Name>picked_reason</Name>
    <UserStyle>
      <Title>Ruled out by the reason picked</Title>
      <FeatureTypeStyle>
        <Rule>
          <RasterSymbolizer>
            <ColorMap>
              <ColorMapEntry color="#784223" opacity="0" quantity="0" label="other"/>
              <ColorMapEntry color="#784223" opacity="0.8" quantity="1" label="ruled out by it"/>
            </ColorMap>
          </RasterSymbolizer>
        </Rule>
      </FeatureTypeStyle>
    </UserStyle>
  </NamedLayer>
</StyledLayerDescriptor>
